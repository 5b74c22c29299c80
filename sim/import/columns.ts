import { type Channel, channelMeaning } from '../../shared-types/channels.ts';
import { type SensorUnit, sensorUnits, toInnerUnit } from '../../shared-types/sensor-units.ts';
import { numberIn } from '../weather/csv-table.ts';
import type { Decimal } from './guess.ts';
import type { ImportMap } from './map.ts';
import type { Miss } from './report.ts';

interface ValueColumn {
  readonly name: string;
  readonly index: number;
  readonly channel: Channel;
  readonly unit: SensorUnit;
}

export interface Columns {
  readonly timeIndex: number;
  readonly values: readonly ValueColumn[];
}

/** Finds the columns of the map in the header. @returns every fault of the map in words instead. */
export function columnsOf(header: readonly string[], map: ImportMap): Columns | readonly string[] {
  const faults: string[] = [];
  const find = (name: string) => {
    const index = header.indexOf(name);
    if (index < 0) faults.push(`no column is called '${name}'; there are: ${header.join(', ')}`);
    else if (header.lastIndexOf(name) !== index) faults.push(`two columns are called '${name}'`);
    return index;
  };
  const timeIndex = find(map.time.column);
  const values = map.values.map(({ column, channel, unit }) => {
    if (sensorUnits[unit].into !== channelMeaning[channel].unit)
      faults.push(`${channel} is not measured in ${unit}`);
    return { name: column, index: find(column), channel, unit };
  });
  const named = map.values.map(({ channel }) => channel);
  for (const channel of new Set(named))
    if (named.indexOf(channel) !== named.lastIndexOf(channel)) faults.push(`two columns become ${channel}`);
  return faults.length > 0 ? faults : { timeIndex, values };
}

/** What a cell holds; null for an empty one or one that is not taken, which is noted. */
export function valueIn(
  cells: readonly string[],
  { name, index, channel, unit }: ValueColumn,
  decimal: Decimal,
  note: (miss: Omit<Miss, 'line'>) => void,
): number | null {
  const text = cells[index] ?? '';
  if (text === '') return null;
  const written = numberIn(decimal === ',' ? text.replace(',', '.') : text);
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
