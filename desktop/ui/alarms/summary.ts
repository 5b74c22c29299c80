import { type Alarm, alarmPriorities } from '../../../shared-types/alarms.ts';
import { standing } from '../store/new-alarms.ts';
import { en } from '../text/en.ts';

const text = en.alarms.summary;

/**
 * How things stand in a sentence or two.
 *
 * @param alarms - Of the newest decision; undefined when there is none.
 * @param oldText - Age of that decision in words once it is old.
 */
export function summaryOf(alarms: readonly Alarm[] | undefined, oldText: string | undefined): string {
  if (alarms === undefined) return text.unheard;
  const now = standing(alarms);
  const over = alarms.filter(({ state }) => state === 'returned-unacknowledged').length;
  const shelved = alarms.filter(({ state }) => state === 'shelved').length;
  const rest = [over === 0 ? '' : text.over(over), shelved === 0 ? '' : text.shelved(shelved)];
  return [first(now, oldText), ...rest].filter(Boolean).join(' ');
}

function first(now: readonly Alarm[], oldText: string | undefined): string {
  if (now.length === 0) return oldText === undefined ? text.calm : text.calmOld(oldText);
  const counts = alarmPriorities
    .map((priority) => ({ priority, count: now.filter((alarm) => alarm.priority === priority).length }))
    .filter(({ count }) => count > 0);
  const [only, another] = counts;
  // All of one priority are counted once.
  if (only !== undefined && another === undefined)
    return `${text.standing(now.length)} ${text.howSoon[only.priority]}.`;
  const parts = counts.map(({ priority, count }) => text.counted(count, text.howSoon[priority]));
  return `${text.standing(now.length)}: ${parts.join(', ')}.`;
}
