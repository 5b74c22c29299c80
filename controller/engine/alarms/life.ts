import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import { alarmText } from '../explain/alarm-text.ts';
import type { AlarmMemory, EngineState } from '../state.ts';
import { isListed } from './by-hand.ts';
import { type AlarmGround, type Condition, conditions } from './conditions.ts';

type Alarms = EngineState['alarms'];

export const alarmCodesInOrder = Object.keys(alarmCatalogue) as AlarmCode[];

const judges = alarmCodesInOrder.map((code) => ({ code, judge: conditions[code] }));

const normal: AlarmMemory = {
  changingMs: null,
  active: false,
  acknowledged: true,
  raisedMs: 0,
  shelvedUntilMs: null,
  shelvedUntilUtcMs: null,
  values: {},
  text: '',
};

/** Brings every alarm up to this step; an alarm that is normal is not kept. */
export function updateAlarms(before: Alarms, ground: AlarmGround, nowMs: number): Alarms {
  const { situation } = ground;
  let changed: { -readonly [C in AlarmCode]?: AlarmMemory } | null = null;
  const quiet = isEmpty(before);
  for (const { code, judge } of judges) {
    const condition = judge(situation, ground);
    if (quiet && condition === null) continue;
    const old = before[code];
    if (condition === null && old === undefined) continue;
    const alarm = live(code, old ?? normal, condition, situation.runMs, nowMs);
    if (alarm === old) continue;
    changed ??= { ...before };
    if (isListed(alarm) || alarm.changingMs !== null) changed[code] = alarm;
    else delete changed[code];
  }
  return changed ?? before;
}

/** True while every alarm is normal. */
export function isEmpty(alarms: Alarms): boolean {
  for (const _code in alarms) return false;
  return true;
}

function live(
  code: AlarmCode,
  before: AlarmMemory,
  condition: Condition | null,
  runMs: number,
  nowMs: number,
): AlarmMemory {
  const alarm = unshelve(before, runMs);
  const holds = condition !== null;
  const told = condition === null ? alarm : tell(code, alarm, condition);
  if (holds === alarm.active) return told.changingMs === null ? told : { ...told, changingMs: null };
  const { onDelayS, offDelayS } = alarmCatalogue[code];
  const sinceMs = alarm.changingMs ?? runMs;
  if (runMs - sinceMs < (holds ? onDelayS : offDelayS) * 1000) return { ...told, changingMs: sinceMs };
  if (!holds) return { ...told, changingMs: null, active: false };
  return { ...told, changingMs: null, active: true, acknowledged: false, raisedMs: nowMs };
}

/** Numbers and sentence stay as they were last true. */
function tell(code: AlarmCode, alarm: AlarmMemory, { values, detail }: Condition): AlarmMemory {
  const text = alarmText(code, values, detail);
  return text === alarm.text ? alarm : { ...alarm, values, text };
}

/** A shelving that has ended leaves an active alarm unacknowledged. */
function unshelve(alarm: AlarmMemory, runMs: number): AlarmMemory {
  if (alarm.shelvedUntilMs === null || runMs < alarm.shelvedUntilMs) return alarm;
  return { ...alarm, shelvedUntilMs: null, shelvedUntilUtcMs: null, acknowledged: !alarm.active };
}
