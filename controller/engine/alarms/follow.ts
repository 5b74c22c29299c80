import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { AlarmMemory, EngineState } from '../state.ts';
import type { Condition } from './conditions.ts';

/** The conditions that hold now. */
export type Holding = Readonly<Partial<Record<AlarmCode, Condition>>>;

/**
 * The alarm that explains this one now: the likeliest of its causes that stands, or that is about to come,
 * so that a follower is not told before its cause.
 */
export function headOf(code: AlarmCode, before: EngineState['alarms'], holding: Holding): AlarmCode | null {
  for (const cause of alarmCatalogue[code].causes)
    if (before[cause]?.active === true || holding[cause] !== undefined) return cause;
  return null;
}

/** An alarm leaves its head when that is gone while its own condition still holds. */
export function follow(alarm: AlarmMemory, head: AlarmCode | null, holds: boolean): AlarmMemory {
  if (head === alarm.head || (head === null && !holds)) return alarm;
  return { ...alarm, head };
}

/** Suppressed by design: what follows from a known cause is listed and logged, but not announced. */
export function isSuppressed(code: AlarmCode, { active, head }: AlarmMemory): boolean {
  return active && head !== null && alarmCatalogue[code].besideCauses !== true;
}
