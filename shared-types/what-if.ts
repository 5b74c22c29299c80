import { z } from 'zod';
import { localDaySchema, phaseNameSchema } from './engine.ts';
import { settingsSchema } from './settings.ts';

/** What one side decided over a day. Counted from decisions: nobody knows what the loop would have done. */
export const decisionCountSchema = z.strictObject({
  /** Times that the pump was told to start. */
  starts: z.int(),
  fills: z.int(),
  /** Time in which the pump was told to run [s]. */
  pumpRunS: z.number(),
});
export type DecisionCount = z.infer<typeof decisionCountSchema>;

/** What one side decided at an instant, and why. */
export const sideSchema = z.strictObject({
  phase: phaseNameSchema,
  pumpFraction: z.number().min(0).max(1),
  drainOpen: z.boolean(),
  reason: z.string(),
});
export type Side = z.infer<typeof sideSchema>;

/**
 * A logged day decided twice by this engine from the same readings: under the settings that were in force
 * then (`base`), and under others (`other`). It tells where decisions part, not what heat that would have brought.
 */
export const whatIfReportSchema = z.strictObject({
  day: localDaySchema,
  steps: z.int(),
  /** Steps at which an output differed. */
  differences: z.int(),
  firstDifference: z.strictObject({ atMs: z.number(), base: sideSchema, other: sideSchema }).nullable(),
  base: decisionCountSchema,
  other: decisionCountSchema,
  /** Settings in force at the day's last step; null when none of its steps could be decided. */
  settingsThen: settingsSchema.nullable(),
  /** Anything that bounds what this can say, in plain words. */
  remarks: z.array(z.string()),
});
export type WhatIfReport = z.infer<typeof whatIfReportSchema>;

/** Something to be known of settings that are allowed and yet have a drawback. */
export const settingsRemarkSchema = z.strictObject({
  text: z.string(),
  /** False when it is so under the settings in force as well. */
  isNew: z.boolean(),
});
export type SettingsRemark = z.infer<typeof settingsRemarkSchema>;
