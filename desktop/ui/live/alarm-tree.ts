import type { Alarm, AlarmPriority } from '../../../shared-types/alarms.ts';

/** A first cause with the alarms that follow from it. */
export interface AlarmGroup {
  readonly head: Alarm;
  readonly followers: readonly Alarm[];
}

const rank: Readonly<Record<AlarmPriority, number>> = { urgent: 0, soon: 1, 'when-convenient': 2 };

/**
 * Alarms folded under their first causes: active before past, most urgent first, then oldest first.
 * A follower whose cause is not in the list stands for itself.
 */
export function alarmGroups(alarms: readonly Alarm[]): readonly AlarmGroup[] {
  const byCode = new Map(alarms.map((alarm) => [alarm.code, alarm]));
  const rootOf = (alarm: Alarm): Alarm => {
    let root = alarm;
    // As many steps as there are alarms, so that a ring of followers ends.
    for (const _ of alarms) root = (root.follows && byCode.get(root.follows)) ?? root;
    return root;
  };
  const heads = alarms.filter((alarm) => rootOf(alarm) === alarm);
  return heads
    .map((head) => ({ head, followers: alarms.filter((one) => one !== head && rootOf(one) === head) }))
    .sort((a, b) => order(a.head, b.head));
}

function order(a: Alarm, b: Alarm): number {
  return Number(b.active) - Number(a.active) || rank[a.priority] - rank[b.priority] || a.sinceMs - b.sinceMs;
}
