import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { Alarm, AlarmCode, AlarmState } from '../../../shared-types/alarms.ts';
import type { AlarmMemory, EngineState } from '../state.ts';
import { isListed } from './by-hand.ts';
import { alarmCodesInOrder, isEmpty } from './life.ts';

type Alarms = EngineState['alarms'];

/** The alarms that people see: causes before what follows from them, the most pressing first. */
export function listAlarms(alarms: Alarms): Alarm[] {
  if (isEmpty(alarms)) return [];
  const listed: Alarm[] = [];
  for (const code of alarmCodesInOrder) {
    const alarm = alarms[code];
    if (alarm !== undefined && isListed(alarm)) listed.push(asSeen(code, alarm, alarms));
  }
  const heads = listed.filter((alarm) => alarm.follows === undefined);
  const followers = listed.filter((alarm) => alarm.follows !== undefined);
  return [...heads, ...followers];
}

function asSeen(code: AlarmCode, alarm: AlarmMemory, alarms: Alarms): Alarm {
  const { priority, causes } = alarmCatalogue[code];
  const follows = alarm.active ? causes.find((cause) => alarms[cause]?.active === true) : undefined;
  return {
    code,
    priority,
    state: stateOf(alarm),
    active: alarm.active,
    sinceMs: alarm.raisedMs,
    ...(follows === undefined ? {} : { follows }),
    ...(alarm.shelvedUntilUtcMs === null ? {} : { shelvedUntilMs: alarm.shelvedUntilUtcMs }),
    values: alarm.values,
    text: alarm.text,
  };
}

function stateOf({ active, acknowledged, shelvedUntilMs }: AlarmMemory): AlarmState {
  if (shelvedUntilMs !== null) return 'shelved';
  if (!active) return 'returned-unacknowledged';
  return acknowledged ? 'acknowledged' : 'unacknowledged';
}
