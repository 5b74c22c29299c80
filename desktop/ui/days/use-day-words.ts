import { useCallback } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import { inLine } from '../format/numbers.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { dayRemarks } from './day-remarks.ts';
import { useToday } from './use-today.ts';

const text = en.days;

/** A day in one sentence: its heat, its starts and fills, and what was odd. */
export function useDayWords(): (summary: DaySummary) => string {
  const times = useTimes();
  const numbers = useNumbers();
  const today = useToday();
  return useCallback(
    (summary) => {
      const { day, heatHomeJ, starts, fills } = summary;
      const parts = [
        heatHomeJ === null ? text.heatUntold : `${inLine(numbers.heat(heatHomeJ))} ${text.home}`,
        text.starts(starts),
        ...(fills === null ? [] : [text.fills(fills)]),
        ...dayRemarks(summary, day === today, numbers).map((remark) => remark.text),
      ];
      return `${times.day(day)}: ${parts.join(', ')}`;
    },
    [times, numbers, today],
  );
}
