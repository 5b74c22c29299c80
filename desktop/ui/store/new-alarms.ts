import type { Alarm } from '../../../shared-types/alarms.ts';

/** Alarms that ask for attention now: active, not put aside by a person, not explained by another. */
export function standing(alarms: readonly Alarm[]): readonly Alarm[] {
  return alarms.filter(({ active, state }) => active && state !== 'shelved' && state !== 'suppressed');
}

/** The alarms that were not there before and that nobody has seen yet: what a person has to be told. */
export function newAlarms(before: readonly Alarm[], after: readonly Alarm[]): readonly Alarm[] {
  const known = new Set(standing(before).map((alarm) => `${alarm.code} ${alarm.sinceMs}`));
  return standing(after).filter(
    (alarm) => alarm.state === 'unacknowledged' && !known.has(`${alarm.code} ${alarm.sinceMs}`),
  );
}
