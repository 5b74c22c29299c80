import { channelMeaning } from '../../shared-types/channels.ts';
import type { Miss } from '../../shared-types/foreign-log.ts';
import { toInnerUnit } from '../../shared-types/sensor-units.ts';
import { numberIn } from '../weather/csv-table.ts';
import type { NamedColumn, PumpColumn, ValueColumn } from './columns.ts';
import type { Decimal } from './guess.ts';

/** Told what of a row was not taken. */
type Note = (miss: Omit<Miss, 'line'>) => void;

/** What a cell holds; null for an empty one or one that is not taken, which is noted. */
export function valueIn(
  cells: readonly string[],
  { name, index, channel, unit }: ValueColumn,
  decimal: Decimal,
  note: Note,
): number | null {
  const text = cells[index] ?? '';
  if (text === '') return null;
  const written = writtenNumber(text, decimal);
  if (Number.isNaN(written)) {
    note({ column: name, text, cause: 'not-a-number' });
    return null;
  }
  const value = toInnerUnit(written, unit);
  const { least, most } = channelMeaning[channel];
  if (value >= least && value <= most) return value;
  note({ column: name, text, cause: 'out-of-range' });
  return null;
}

/** Speed of the pump that a cell tells, 0 to 1. */
export function pumpIn(
  cells: readonly string[],
  { name, index, unit }: PumpColumn,
  decimal: Decimal,
  note: Note,
): number | null {
  const text = cells[index] ?? '';
  if (text === '') return null;
  if (unit === 'on-off') return stateIn(text, name, note);
  const written = writtenNumber(text, decimal);
  const fraction = unit === '%' ? written / 100 : written;
  if (fraction >= 0 && fraction <= 1) return fraction;
  note({ column: name, text, cause: Number.isNaN(written) ? 'not-a-number' : 'out-of-range' });
  return null;
}

/** Whether the drain stands open as a cell tells. */
export function drainIn(cells: readonly string[], { name, index }: NamedColumn, note: Note): boolean | null {
  const text = cells[index] ?? '';
  const state = text === '' ? null : stateIn(text, name, note);
  return state === null ? null : state === 1;
}

const states: Readonly<Record<string, 0 | 1>> = {
  ...{ '0': 0, off: 0, false: 0, no: 0, closed: 0, stopped: 0 },
  ...{ '1': 1, on: 1, true: 1, yes: 1, open: 1, running: 1 },
};

function stateIn(text: string, column: string, note: Note): 0 | 1 | null {
  const word = text.toLowerCase();
  if (Object.hasOwn(states, word)) return states[word] as 0 | 1;
  note({ column, text, cause: 'not-a-state' });
  return null;
}

const writtenNumber = (text: string, decimal: Decimal) =>
  numberIn(decimal === ',' ? text.replace(',', '.') : text);
