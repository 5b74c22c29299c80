import type { DaySummary } from '../../../shared-types/log.ts';
import type { NumberFormats } from '../format/numbers.ts';
import { en } from '../text/en.ts';

/** What is odd about a day, in words. */
export interface DayRemark {
  readonly kind: 'alarms' | 'imported' | 'logged' | 'today';
  readonly text: string;
  /** The same where there is hardly room. */
  readonly brief?: string;
}

/** Share of a day from which its log passes as whole. */
const wholeFraction = 0.995;

/** True when something of a day that is over is missing from the log. */
export const hasGap = (summary: DaySummary): boolean => summary.coveredFraction < wholeFraction;

export function dayRemarks(
  summary: DaySummary,
  isToday: boolean,
  numbers: NumberFormats,
): readonly DayRemark[] {
  const remarks: DayRemark[] = [];
  if (summary.imported)
    remarks.push({ kind: 'imported', text: en.days.imported, brief: en.days.year.marks.imported });
  if (summary.alarms !== null && summary.alarms > 0)
    remarks.push({ kind: 'alarms', text: en.days.alarms(summary.alarms), brief: `▲ ${summary.alarms}` });
  if (isToday) remarks.push({ kind: 'today', text: en.days.today });
  else if (hasGap(summary))
    // Rounded down: what is not whole must not read as 100 %.
    remarks.push({
      kind: 'logged',
      text: en.days.logged(numbers.percent(Math.floor(summary.coveredFraction * 100) / 100)),
    });
  return remarks;
}
