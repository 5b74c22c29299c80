import type { Alarm } from '../../../shared-types/alarms.ts';

/** Alarms that ask for attention now: active, and not put aside by a person. */
export function standing(alarms: readonly Alarm[]): readonly Alarm[] {
  return alarms.filter((alarm) => alarm.active && alarm.state !== 'shelved');
}

/**
 * First causes among the alarms that were not there before: what a person has to be told.
 * An alarm that follows from another is not announced beside it.
 */
export function newAlarms(before: readonly Alarm[], after: readonly Alarm[]): readonly Alarm[] {
  const known = new Set(standing(before).map((alarm) => `${alarm.code} ${alarm.sinceMs}`));
  return standing(after).filter(
    (alarm) => alarm.follows === undefined && !known.has(`${alarm.code} ${alarm.sinceMs}`),
  );
}
