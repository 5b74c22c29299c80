import { z } from 'zod';
import { localDaySchema } from './engine.ts';

/** What the weather of a day allowed so far, or why that cannot be told. */
export const allowedHeatSchema = z.discriminatedUnion('state', [
  z.strictObject({
    state: z.literal('told'),
    day: localDaySchema,
    /** Whether the sun was measured, or is taken to shine through a clear sky all the time. */
    sun: z.enum(['measured', 'clear-sky']),
    /** Instant up to which both heats count [UTC ms]. */
    untilMs: z.number(),
    /** Heat that a pan would have gained that was always full of water as cool as the store bottom [J]. */
    allowedJ: z.number().min(0),
    /** Heat that came home until then [J]. */
    heatHomeJ: z.number(),
  }),
  /** The sun has not risen yet, or has hardly shone. */
  z.strictObject({ state: z.literal('no-sun-yet') }),
  /** Without the air's temperature nobody knows what a sheet loses. */
  z.strictObject({ state: z.literal('no-air-sensor') }),
  /** `coveredFraction`: share of the clear day's light so far for which all that is needed was logged, 0 to 1. */
  z.strictObject({ state: z.literal('too-little-logged'), coveredFraction: z.number().min(0).max(1) }),
]);
export type AllowedHeat = z.infer<typeof allowedHeatSchema>;
