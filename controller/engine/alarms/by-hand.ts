import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { AlarmMemory, EngineState } from '../state.ts';

type Alarms = EngineState['alarms'];

interface Now {
  readonly runMs: number;
  readonly nowMs: number;
}

/** A person has seen the alarm. */
export function acknowledge(alarms: Alarms, code: AlarmCode): Alarms | 'no-such-alarm' | 'nothing-to-do' {
  const alarm = alarms[code];
  if (alarm === undefined || !isListed(alarm)) return 'no-such-alarm';
  return alarm.acknowledged ? 'nothing-to-do' : { ...alarms, [code]: { ...alarm, acknowledged: true } };
}

/** A person puts the alarm aside for a while; it comes back by itself. */
export function shelve(
  alarms: Alarms,
  code: AlarmCode,
  forMs: number,
  { runMs, nowMs }: Now,
): Alarms | 'no-such-alarm' {
  const alarm = alarms[code];
  if (alarm === undefined || !isListed(alarm)) return 'no-such-alarm';
  return {
    ...alarms,
    [code]: { ...alarm, shelvedUntilMs: runMs + forMs, shelvedUntilUtcMs: nowMs + forMs },
  };
}

/** True when the alarm is in any state but normal. */
export function isListed(alarm: AlarmMemory): boolean {
  return alarm.active || !alarm.acknowledged || alarm.shelvedUntilMs !== null;
}
