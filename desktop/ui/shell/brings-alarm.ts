import { alarmsOf } from '../store/live-selectors.ts';
import type { LiveState } from '../store/live-store.ts';
import { newAlarms } from '../store/new-alarms.ts';
import { own } from '../store/own.ts';

/** Whether any site has an alarm that it did not have before. One that is first heard of brings no news. */
export function bringsAlarm(before: LiveState, after: LiveState): boolean {
  if (before.sites === after.sites) return false;
  return Object.keys(after.sites).some(
    (name) =>
      own(before.sites, name) !== undefined &&
      newAlarms(alarmsOf(before, name), alarmsOf(after, name)).length > 0,
  );
}
