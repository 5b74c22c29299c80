import { z } from 'zod';
import { channels } from './channels.ts';

export const channelSchema = z.enum(channels);

/** What a sensor or its converter says about itself instead of a number. */
export const sensorFaultSchema = z.enum(['open-circuit', 'short-circuit', 'unreadable']);
export type SensorFault = z.infer<typeof sensorFaultSchema>;

/**
 * A reading as it came in, already in the channel's unit.
 *
 * `ageMs` is counted on the controller's steady clock since the reading arrived, so that no step of
 * the calendar clock makes a reading older or younger. Its instant is `input.nowMs - ageMs`.
 */
export const rawReadingSchema = z.strictObject({
  value: z.number().nullable(),
  ageMs: z.number().min(0),
  fault: sensorFaultSchema.optional(),
});
export type RawReading = z.infer<typeof rawReadingSchema>;

export const rawReadingsSchema = z.partialRecord(channelSchema, rawReadingSchema);
export type RawReadings = z.infer<typeof rawReadingsSchema>;

/** Why a reading is not simply good. */
export const readingCauses = [
  'missing',
  'open-circuit',
  'short-circuit',
  'unreadable',
  'out-of-range',
  'stale',
  'not-a-number',
  'jumped',
  'stuck',
  'noisy',
  'disagrees',
] as const;
export const readingCauseSchema = z.enum(readingCauses);
export type ReadingCause = z.infer<typeof readingCauseSchema>;

/**
 * A reading after the engine judged it. A failed one carries no value, so that nothing can use it;
 * a doubtful one may tighten a protection, never relax it.
 */
export const trustedReadingSchema = z.discriminatedUnion('quality', [
  z.strictObject({ quality: z.literal('good'), value: z.number(), ageMs: z.number() }),
  z.strictObject({
    quality: z.literal('doubtful'),
    value: z.number(),
    ageMs: z.number(),
    cause: readingCauseSchema,
  }),
  z.strictObject({ quality: z.literal('failed'), cause: readingCauseSchema }),
]);
export type TrustedReading = z.infer<typeof trustedReadingSchema>;

/** Only the channels that the site has. */
export const trustedReadingsSchema = z.partialRecord(channelSchema, trustedReadingSchema);
export type TrustedReadings = z.infer<typeof trustedReadingsSchema>;
