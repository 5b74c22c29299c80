import { type SettingName, type Settings, settingDeclarations } from '../../../../shared-types/settings.ts';
import type { SettingRange } from '../../../../shared-types/tuning.ts';
import type { TemperatureUnit } from '../../format/units.ts';
import { isSwitch, settingUnit } from '../../setpoints/setting-unit.ts';
import { fieldText, parseField, settingText, shownText } from '../../setpoints/setting-value.ts';
import { en } from '../../text/en.ts';
import { wholeNumber } from '../chosen-days.ts';
import { roundBelow } from './round-step.ts';

/** A range as somebody types it, in the units of the screen. */
export interface RangeDraft {
  readonly setting: SettingName;
  readonly from: string;
  readonly to: string;
  readonly values: string;
}

type Part = 'from' | 'to' | 'values';

/** What a draft says: a range, or what is wrong with which part of it. */
export interface ReadRange {
  readonly range: SettingRange | null;
  readonly faults: Readonly<Partial<Record<Part, string>>>;
}

const text = en.tuning.many.faults;

/** Share of a setpoint's allowed span that a new range reaches to either side. A design choice. */
const reach = 0.1;
const usualValues = 5;
const mostValues = 50;

/** A range around the value in force; of a switch both ways. */
export function newRange(setting: SettingName, inForce: Settings, temperature: TemperatureUnit): RangeDraft {
  const { least, most } = settingDeclarations[setting];
  if (isSwitch(setting)) return { setting, from: '0', to: '1', values: '2' };
  const { shown } = settingUnit(setting, temperature);
  const [floor, now, roof] = [shown(least), shown(inForce[setting]), shown(most)];
  const gaps = usualValues - 1;
  // Round steps away from the value in force, which is one of those that are tried.
  const step = roundBelow((2 * reach * (roof - floor)) / gaps);
  const below = Math.min(gaps / 2, Math.floor((now - floor) / step + 1e-9));
  const above = Math.min(gaps - below, Math.floor((roof - now) / step + 1e-9));
  const at = (steps: number) => shownText(now + steps * step);
  return { setting, from: at(above - gaps), to: at(above), values: String(usualValues) };
}

/** Reads a draft. Whether its combinations are allowed is known to the sweep alone. */
export function readRange(draft: RangeDraft, temperature: TemperatureUnit): ReadRange {
  const { setting } = draft;
  const from = parseField(setting, draft.from, temperature);
  const to = parseField(setting, draft.to, temperature);
  const values = wholeNumber(draft.values);
  const faults: Partial<Record<Part, string>> = {};
  const note = (part: Part, fault: string | undefined) => {
    if (fault !== undefined) faults[part] = fault;
  };
  note('from', endFault(setting, from, temperature));
  note('to', endFault(setting, to, temperature));
  if (values === null || values > mostValues) note('values', text.values);
  if (from === null || to === null || values === null || Object.keys(faults).length > 0)
    return { range: null, faults };
  if (from > to) return { range: null, faults: { from: text.order } };
  if ((values === 1) !== (from === to)) return { range: null, faults: { values: text.single } };
  return { range: { setting, from, to, values }, faults };
}

function endFault(
  setting: SettingName,
  value: number | null,
  temperature: TemperatureUnit,
): string | undefined {
  const { least, most } = settingDeclarations[setting];
  if (value === null) return text.number;
  if (value >= least && value <= most) return undefined;
  return text.outside(fieldText(setting, least, temperature), settingText(setting, most, temperature));
}

/** Every combination of the ranges. */
export const combinations = (ranges: readonly SettingRange[]): number =>
  ranges.reduce((product, { values }) => product * values, 1);
