import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import { alarmText } from '../explain/alarm-text.ts';
import type { AlarmMemory, EngineState } from '../state.ts';
import { offShelf } from './by-hand.ts';
import { type AlarmGround, type Condition, conditions } from './conditions.ts';
import { follow, type Holding, isListed, isSuppressed } from './follow.ts';
import { isRemembered, offDelayMs, repeatsOf } from './repeats.ts';

type Alarms = EngineState['alarms'];

export const alarmCodesInOrder = Object.keys(alarmCatalogue) as AlarmCode[];

const judges = alarmCodesInOrder.map((code) => ({ code, judge: conditions[code] }));

const normal: AlarmMemory = {
  changingMs: null,
  active: false,
  acknowledged: true,
  raisedMs: 0,
  activeSinceMs: 0,
  returnedMs: null,
  repeats: 0,
  head: null,
  shelvedUntilMs: null,
  shelvedUntilUtcMs: null,
  values: {},
  text: '',
};

/** Brings every alarm up to this step; an alarm that is normal is not kept for long. */
export function updateAlarms(before: Alarms, ground: AlarmGround, nowMs: number): Alarms {
  const holding = judgeAll(before, ground);
  if (holding === none && isEmpty(before)) return before;
  const { runMs } = ground.situation;
  let changed: { -readonly [C in AlarmCode]?: AlarmMemory } | null = null;
  for (const code of alarmCodesInOrder) {
    const condition = holding[code];
    const old = before[code];
    if (condition === undefined && old === undefined) continue;
    const followed = follow(code, endShelf(old ?? normal, runMs), before, holding);
    const alarm = live(code, followed, condition, runMs, nowMs);
    const keep = isListed(alarm) || alarm.changingMs !== null || isRemembered(alarm.returnedMs, runMs);
    if (alarm === old && keep) continue;
    changed ??= { ...before };
    if (keep) changed[code] = alarm;
    else delete changed[code];
  }
  return changed ?? before;
}

const none: Holding = {};

function judgeAll(before: Alarms, ground: AlarmGround): Holding {
  const calm = isEmpty(before);
  let holding: { -readonly [C in AlarmCode]?: Condition } | null = null;
  for (const { code, judge } of judges) {
    const condition = judge(ground.situation, ground, !calm && before[code]?.active === true);
    if (condition === null) continue;
    holding ??= {};
    holding[code] = condition;
  }
  return holding ?? none;
}

/** True while every alarm is normal. */
export function isEmpty(alarms: Alarms): boolean {
  for (const _code in alarms) return false;
  return true;
}

function live(
  code: AlarmCode,
  alarm: AlarmMemory,
  condition: Condition | undefined,
  runMs: number,
  nowMs: number,
): AlarmMemory {
  const holds = condition !== undefined;
  const told = condition === undefined ? alarm : tell(code, alarm, condition);
  if (holds === alarm.active) return told.changingMs === null ? told : { ...told, changingMs: null };
  const sinceMs = alarm.changingMs ?? runMs;
  const delayMs = holds ? alarmCatalogue[code].onDelayS * 1000 : offDelayMs(code, alarm.repeats);
  if (runMs - sinceMs < delayMs) return told.changingMs === sinceMs ? told : { ...told, changingMs: sinceMs };
  return holds ? raise(told, runMs, nowMs) : letReturn(code, told, runMs);
}

function raise(alarm: AlarmMemory, runMs: number, nowMs: number): AlarmMemory {
  return {
    ...alarm,
    changingMs: null,
    active: true,
    acknowledged: false,
    raisedMs: nowMs,
    activeSinceMs: runMs,
    repeats: repeatsOf(alarm, runMs),
  };
}

/** What was not announced when it returns needs no seeing afterwards. */
function letReturn(code: AlarmCode, alarm: AlarmMemory, runMs: number): AlarmMemory {
  const acknowledged = alarm.acknowledged || isSuppressed(code, alarm);
  return { ...alarm, changingMs: null, active: false, acknowledged, returnedMs: runMs, head: null };
}

/** Numbers and sentence stay as they were last true. */
function tell(code: AlarmCode, alarm: AlarmMemory, { values, detail }: Condition): AlarmMemory {
  const text = alarmText(code, values, detail);
  return text === alarm.text ? alarm : { ...alarm, values, text };
}

function endShelf(alarm: AlarmMemory, runMs: number): AlarmMemory {
  return alarm.shelvedUntilMs === null || runMs < alarm.shelvedUntilMs ? alarm : offShelf(alarm);
}
