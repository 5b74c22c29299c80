import type { DaySummary } from '../../../../shared-types/log.ts';
import type { SettingRange } from '../../../../shared-types/tuning.ts';
import type { TemperatureUnit } from '../../format/units.ts';
import { en } from '../../text/en.ts';
import { daysBetween, newestDays, wholeNumber } from '../chosen-days.ts';
import { type ReadRange, readRange } from './range-draft.ts';
import type { SweepForm } from './sweep-form.ts';

/** What the form of a sweep says. */
export interface SweepPlan {
  readonly rows: readonly ReadRange[];
  readonly ranges: readonly SettingRange[];
  readonly days: readonly string[];
  readonly countFault: string | null;
  /** What is wrong with the whole of it; null when nothing is. */
  readonly fault: string | null;
  readonly ready: boolean;
}

const text = en.tuning.many.faults;

/** @param today - Left out: the controller still writes it. */
export function readSweep(
  form: SweepForm,
  logged: readonly DaySummary[],
  today: string | undefined,
  temperature: TemperatureUnit,
): SweepPlan {
  const rows = form.ranges.map((draft) => readRange(draft, temperature));
  const ranges = rows.flatMap(({ range }) => range ?? []);
  const count = wholeNumber(form.count);
  const days =
    form.by === 'newest'
      ? newestDays(logged, today, count ?? 0)
      : daysBetween(logged, today, form.from, form.to);
  const countFault = form.by === 'newest' && count === null ? text.number : null;
  const twice = new Set(form.ranges.map(({ setting }) => setting)).size < form.ranges.length;
  const fault = twice ? text.twice : countFault === null && days.length === 0 ? text.days : null;
  const ready = rows.every(({ range }) => range !== null) && fault === null && countFault === null;
  return { rows, ranges, days, countFault, fault, ready };
}
