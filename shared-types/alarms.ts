import { z } from 'zod';

/** Every alarm. An alarm asks a person to do something in time; what asks nothing is an event. */
export const alarmCodes = [
  'frost-danger',
  'pan-sensors-failed',
  'store-sensor-failed',
  'sensor-failed',
  'sensor-doubtful',
  'all-sensors-silent',
  'fill-failed',
  'fill-locked',
  'dry-running',
  'no-flow',
  'flow-low',
  'poor-contact',
  'leak',
  'reservoir-low',
  'drain-stands-open',
  'water-lost',
  'not-emptying',
  'liner-hot',
  'liner-not-cooled',
  'store-hot',
  'scald-caution',
  'frost-season-near',
  'output-not-followed',
  'internal-error',
] as const;
export const alarmCodeSchema = z.enum(alarmCodes);
export type AlarmCode = z.infer<typeof alarmCodeSchema>;

/** How soon a person has to act: within minutes, within the day, at the next visit. */
export const alarmPriorities = ['urgent', 'soon', 'when-convenient'] as const;
export const alarmPrioritySchema = z.enum(alarmPriorities);
export type AlarmPriority = z.infer<typeof alarmPrioritySchema>;

/**
 * The states of IEC 62682 that this software uses, from memory; an alarm in the state normal is not listed.
 *
 * `suppressed`: suppressed by design, since its cause is announced. There is no state out of service: a shelf
 * without an end is not allowed. An alarm that latches (the lock) stays active until a person resets it.
 */
export const alarmStates = [
  'unacknowledged',
  'acknowledged',
  'returned-unacknowledged',
  'shelved',
  'suppressed',
] as const;
export const alarmStateSchema = z.enum(alarmStates);
export type AlarmState = z.infer<typeof alarmStateSchema>;

export const alarmSchema = z.strictObject({
  code: alarmCodeSchema,
  priority: alarmPrioritySchema,
  state: alarmStateSchema,
  active: z.boolean(),
  /** UTC instant at which the alarm was last raised. */
  sinceMs: z.number(),
  /** Alarm that explains this one; absent when it stands for itself. */
  follows: alarmCodeSchema.optional(),
  shelvedUntilMs: z.number().optional(),
  values: z.record(z.string(), z.number()),
  text: z.string(),
});
export type Alarm = z.infer<typeof alarmSchema>;
