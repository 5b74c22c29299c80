import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { AlarmMemory, EngineState } from '../state.ts';
import type { Condition } from './conditions.ts';

type Alarms = EngineState['alarms'];

/** The conditions that hold now. */
export type Holding = Readonly<Partial<Record<AlarmCode, Condition>>>;

/** Brings what explains an alarm up to this step. */
export function follow(code: AlarmCode, alarm: AlarmMemory, before: Alarms, holding: Holding): AlarmMemory {
  const head = headOf(code, before, holding) ?? headOfOld(code, alarm, before, holding);
  return head === alarm.head ? alarm : { ...alarm, head };
}

/**
 * The alarm that explains this one now: the likeliest of its causes that stands, or that is about to come,
 * so that a follower is not told before its cause.
 */
function headOf(code: AlarmCode, before: Alarms, holding: Holding): AlarmCode | null {
  for (const cause of alarmCatalogue[code].causes)
    if (before[cause]?.active === true || holding[cause] !== undefined) return cause;
  return null;
}

/**
 * What still explains the alarm when no cause stands any more: nothing, once its own condition holds without
 * one. What happened once (an alarm without an off-delay) keeps the cause that it had for as long as that is listed.
 */
function headOfOld(
  code: AlarmCode,
  { head }: AlarmMemory,
  before: Alarms,
  holding: Holding,
): AlarmCode | null {
  if (head === null || holding[code] === undefined) return head;
  const cause = before[head];
  return alarmCatalogue[code].offDelayS === 0 && cause !== undefined && isListed(cause) ? head : null;
}

/** Suppressed by design: what follows from a known cause is listed and logged, but not announced. */
export function isSuppressed(code: AlarmCode, { active, head }: AlarmMemory): boolean {
  return active && head !== null && alarmCatalogue[code].besideCauses !== true;
}

/** True when the alarm is in any state but normal. */
export function isListed(alarm: AlarmMemory): boolean {
  return alarm.active || !alarm.acknowledged || alarm.shelvedUntilMs !== null;
}
