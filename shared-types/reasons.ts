import { z } from 'zod';

/**
 * Every reason the engine can give, for a phase, an output or a refusal to act.
 * A closed set: a new rule brings its code here and its sentence to the engine.
 */
export const reasonCodes = [
  // nothing is done, and why
  'waiting-for-sun',
  'waiting-fill-difference',
  'waiting-start-difference',
  'waiting-fill-delay',
  'waiting-start-delay',
  'waiting-stop-delay',
  'waiting-least-off',
  'waiting-starts-per-hour',
  'waiting-after-emptying',
  'waiting-fills-per-day',
  'waiting-worth-filling',
  'start-up-proving',
  // something is done for heat
  'filling-for-heat',
  'circulating-for-heat',
  'circulating-least-on',
  'resting-no-gain',
  'resting-colder-than-store',
  'resting-through-gap',
  'circulating-through-gap',
  'warming-batch',
  'sending-batch-home',
  'emptying-no-gain',
  'difference-doubted',
  'emptied',
  'filled',
  'cooling-store',
  'exercising-pump',
  // the operator asked
  'operator-run',
  'operator-empty',
  'operator-rest',
  'commissioning-emptying',
  'commissioning-filling',
  'commissioning-flowing',
  'commissioning-draining',
  // protections
  'frost-measured',
  'frost-trend',
  'frost-blind',
  'frost-all-sensors-failed',
  'frost-waiting-release',
  'frost-predicted',
  'frost-season',
  'store-at-frost',
  'store-limit',
  'liner-heat',
  'dumping-heat',
  'sensors-failed',
  'dry-running',
  'no-flow',
  'pump-runs-on',
  'reservoir-low',
  'drain-stands-open',
  'water-lost',
  'fill-failed',
  'fill-failed-locked',
  'not-emptying',
  'internal-error',
  // outputs follow the phase
  'drain-open-when-empty',
  'drain-open-to-empty',
  'drain-closed-to-hold',
  'drain-pump-runs',
  'drain-pump-off',
  'pump-off-while-emptying',
  'pump-off-when-empty',
  'pump-fills',
  'output-not-fitted',
] as const;
export const reasonCodeSchema = z.enum(reasonCodes);
export type ReasonCode = z.infer<typeof reasonCodeSchema>;

/** A reason: what it is, the numbers in it (names end in their unit), and the sentence made of both. */
export const reasonSchema = z.strictObject({
  code: reasonCodeSchema,
  values: z.record(z.string(), z.number()),
  text: z.string(),
});
export type Reason = z.infer<typeof reasonSchema>;
