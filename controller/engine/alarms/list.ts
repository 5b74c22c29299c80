import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { Alarm, AlarmCode, AlarmPriority, AlarmState } from '../../../shared-types/alarms.ts';
import type { AlarmMemory, EngineState } from '../state.ts';
import { isListed, isSuppressed } from './follow.ts';
import { alarmCodesInOrder, isEmpty } from './life.ts';

type Alarms = EngineState['alarms'];

const rank: Readonly<Record<AlarmPriority, number>> = { urgent: 0, soon: 1, 'when-convenient': 2 };

interface Listed {
  readonly code: AlarmCode;
  readonly alarm: AlarmMemory;
}

/** Lists by what they were made of, which stays the same from step to step while no alarm changes. */
const listsOf = new WeakMap<Alarms, Alarm[]>();

/** The alarms that people see: first causes, each with what follows from it behind it. */
export function listAlarms(alarms: Alarms): Alarm[] {
  if (isEmpty(alarms)) return [];
  const known = listsOf.get(alarms);
  if (known !== undefined) return known;
  const list = listOf(alarms);
  listsOf.set(alarms, list);
  return list;
}

function listOf(alarms: Alarms): Alarm[] {
  const listed: Listed[] = [];
  for (const code of alarmCodesInOrder) {
    const alarm = alarms[code];
    if (alarm !== undefined && isListed(alarm)) listed.push({ code, alarm });
  }
  const seen = listed.sort(inOrder).map((one) => asSeen(one, alarms));
  return seen.filter(({ follows }) => follows === undefined).flatMap((head) => [head, ...under(head, seen)]);
}

function under({ code }: Alarm, seen: readonly Alarm[]): Alarm[] {
  const followers = seen.filter(({ follows }) => follows === code);
  return followers.flatMap((follower) => [follower, ...under(follower, seen)]);
}

/** What stands before what is over, then the most pressing, then the first: by the steady clock, no label. */
function inOrder(a: Listed, b: Listed): number {
  return (
    Number(b.alarm.active) - Number(a.alarm.active) ||
    rank[alarmCatalogue[a.code].priority] - rank[alarmCatalogue[b.code].priority] ||
    a.alarm.activeSinceMs - b.alarm.activeSinceMs
  );
}

function asSeen({ code, alarm }: Listed, alarms: Alarms): Alarm {
  const { head } = alarm;
  // A cause that is only about to come is not listed yet.
  const cause = head === null ? undefined : alarms[head];
  const follows = cause !== undefined && isListed(cause) ? head : null;
  return {
    code,
    priority: alarmCatalogue[code].priority,
    state: stateOf(code, alarm),
    active: alarm.active,
    sinceMs: alarm.raisedMs,
    ...(follows === null ? {} : { follows }),
    ...(alarm.shelvedUntilUtcMs === null ? {} : { shelvedUntilMs: alarm.shelvedUntilUtcMs }),
    values: alarm.values,
    text: alarm.text,
  };
}

function stateOf(code: AlarmCode, alarm: AlarmMemory): AlarmState {
  if (alarm.shelvedUntilMs !== null) return 'shelved';
  if (!alarm.active) return 'returned-unacknowledged';
  if (isSuppressed(code, alarm)) return 'suppressed';
  return alarm.acknowledged ? 'acknowledged' : 'unacknowledged';
}
