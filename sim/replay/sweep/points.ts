import {
  type SettingName,
  type Settings,
  settingDeclarations,
  settingNames,
  settingsSchema,
} from '../../../shared-types/settings.ts';
import type { SettingRange, SweepReport } from '../../../shared-types/tuning.ts';
import { hashFraction } from '../../weather/random.ts';
import { halton, mostDirections, shifted } from './halton.ts';

export type Change = Partial<Record<SettingName, number>>;

/** One set of settings to be tried. */
export interface Point {
  readonly change: Change;
  readonly settings: Settings;
}

export interface Points {
  /** The first is the settings in force. */
  readonly points: readonly Point[];
  readonly refused: SweepReport['refused'];
  readonly remarks: readonly string[];
}

/** More sets than this are not all tried, but sampled; a design choice. */
export const mostPoints = 400;
const stream = 731;
/** Draws until so many sets in a row were known already. */
const patience = 1000;

/**
 * All sets that the ranges span, the settings in force first; where they are too many, a sample that covers them evenly.
 *
 * @throws RangeError for ranges that cannot be meant, with words for people.
 */
export function pointsOf(ranges: readonly SettingRange[], inForce: Settings, seed: number): Points {
  checkRanges(ranges);
  const columns = ranges.map(valuesOf);
  const count = columns.reduce((product, values) => product * values.length, 1);
  const whole = count <= mostPoints;
  const changes = whole ? grid(ranges, columns, count) : sample(ranges, columns, seed);
  const remarks = whole
    ? []
    : [`The ranges span ${count} sets of settings; ${changes.length} of them, spread evenly, were tried.`];
  return { ...sorted(changes, inForce), remarks };
}

/** Values of a range, in its order, none twice. */
export function valuesOf({ from, to, values }: SettingRange): number[] {
  const list = Array.from({ length: values }, (_, index) =>
    // Twelve digits: a tenth is a tenth however it was reached.
    values === 1 ? from : Number((from + ((to - from) * index) / (values - 1)).toPrecision(12)),
  );
  return [...new Set(list)];
}

function checkRanges(ranges: readonly SettingRange[]): void {
  if (ranges.length === 0) throw new RangeError('give one range or more');
  if (ranges.length > mostDirections) throw new RangeError(`at most ${mostDirections} ranges can be tried`);
  const names = ranges.map(({ setting }) => setting);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined) throw new RangeError(`${twice} is given twice`);
  for (const { setting, from, to } of ranges) {
    if (from > to) throw new RangeError(`the range of ${setting} runs from ${from} down to ${to}`);
    const { least, most, unit } = settingDeclarations[setting];
    if (to < least || from > most)
      throw new RangeError(
        `${setting} lies between ${least} and ${most} ${unit}; no value of the range does`,
      );
  }
}

/** The last range runs fastest. */
function grid(ranges: readonly SettingRange[], columns: readonly number[][], count: number): Change[] {
  return Array.from({ length: count }, (_, index) => {
    let rest = index;
    const picked = columns.toReversed().map((values) => {
      const value = values[rest % values.length] as number;
      rest = Math.floor(rest / values.length);
      return value;
    });
    return changeOf(ranges, picked.toReversed());
  });
}

function sample(ranges: readonly SettingRange[], columns: readonly number[][], seed: number): Change[] {
  const shifts = columns.map((_, direction) => hashFraction(seed, stream, direction));
  const found = new Map<string, Change>();
  for (let index = 1, idle = 0; found.size < mostPoints && idle < patience; index++) {
    const picked = columns.map((values, direction) => {
      const place = shifted(halton(index, direction), shifts[direction] as number);
      return values[Math.floor(place * values.length)] as number;
    });
    const key = picked.join();
    idle = found.has(key) ? idle + 1 : 0;
    found.set(key, changeOf(ranges, picked));
  }
  return [...found.values()];
}

function changeOf(ranges: readonly SettingRange[], values: readonly number[]): Change {
  const change: Change = {};
  ranges.forEach(({ setting }, index) => {
    change[setting] = values[index] as number;
  });
  return change;
}

/** Parts what may be tried from what the table of settings refuses. */
function sorted(changes: readonly Change[], inForce: Settings): Pick<Points, 'points' | 'refused'> {
  const points: Point[] = [{ change: {}, settings: inForce }];
  const refused: { change: Change; why: string }[] = [];
  for (const given of changes) {
    const change = differing(given, inForce);
    if (Object.keys(change).length === 0) continue;
    const checked = settingsSchema.safeParse({ ...inForce, ...change });
    if (checked.success) points.push({ change, settings: checked.data });
    else refused.push({ change, why: [...new Set(checked.error.issues.map(words))].join(' ') });
  }
  return { points, refused };
}

function differing(given: Change, inForce: Settings): Change {
  const change: Change = {};
  for (const name of settingNames) {
    const value = given[name];
    if (value !== undefined && value !== inForce[name]) change[name] = value;
  }
  return change;
}

function words({ code, path, message }: { code: string; path: PropertyKey[]; message: string }): string {
  return code === 'custom' ? message : `${path.join('.')}: ${message}.`;
}
