import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { AlarmMemory, EngineState } from '../state.ts';
import { isListed, isSuppressed } from './follow.ts';

type Alarms = EngineState['alarms'];

interface Now {
  readonly runMs: number;
  readonly nowMs: number;
}

/** A person has seen the alarm. What is not announced needs no seeing. */
export function acknowledge(alarms: Alarms, code: AlarmCode): Alarms | 'no-such-alarm' | 'nothing-to-do' {
  const alarm = alarms[code];
  if (alarm === undefined || !isListed(alarm)) return 'no-such-alarm';
  if (alarm.acknowledged || alarm.shelvedUntilMs !== null || isSuppressed(code, alarm))
    return 'nothing-to-do';
  return { ...alarms, [code]: { ...alarm, acknowledged: true } };
}

/**
 * A person puts the alarm aside for a while; it comes back by itself.
 *
 * A shelf always has an end, a day at most: nothing is taken out of service for good. What is urgent is
 * not put aside at all.
 */
export function shelve(
  alarms: Alarms,
  code: AlarmCode,
  forMs: number,
  { runMs, nowMs }: Now,
): Alarms | 'no-such-alarm' | 'not-shelvable' {
  const alarm = alarms[code];
  if (alarm === undefined || !isListed(alarm)) return 'no-such-alarm';
  if (alarmCatalogue[code].priority === 'urgent') return 'not-shelvable';
  return {
    ...alarms,
    [code]: { ...alarm, shelvedUntilMs: runMs + forMs, shelvedUntilUtcMs: nowMs + forMs },
  };
}

/** A person takes the alarm off the shelf before its time. */
export function unshelve(alarms: Alarms, code: AlarmCode): Alarms | 'no-such-alarm' | 'nothing-to-do' {
  const alarm = alarms[code];
  if (alarm === undefined || !isListed(alarm)) return 'no-such-alarm';
  return alarm.shelvedUntilMs === null ? 'nothing-to-do' : { ...alarms, [code]: offShelf(alarm) };
}

/** Off the shelf an active alarm is to be seen anew; one that returned meanwhile is normal. */
export function offShelf(alarm: AlarmMemory): AlarmMemory {
  return { ...alarm, shelvedUntilMs: null, shelvedUntilUtcMs: null, acknowledged: !alarm.active };
}
