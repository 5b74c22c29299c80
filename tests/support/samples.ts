import type { Alarm } from '../../shared-types/alarms.ts';
import type { DaySummary } from '../../shared-types/log.ts';

/** A made-up alarm that nobody has seen yet. */
export const frostAlarm: Alarm = {
  code: 'frost-danger',
  priority: 'urgent',
  state: 'unacknowledged',
  active: true,
  sinceMs: 1,
  values: {},
  text: 'Frost.',
};

/** A made-up day of 10 kWh that the log covers wholly. */
export const daySummary = (day: string, change: Partial<DaySummary> = {}): DaySummary => ({
  day,
  steps: 1,
  firstMs: 0,
  lastMs: 0,
  heatHomeJ: 3.6e7,
  heatLostJ: 0,
  electricityJ: 0,
  pumpRunS: 0,
  starts: 0,
  fills: 0,
  alarms: 0,
  coveredFraction: 1,
  ...change,
});
