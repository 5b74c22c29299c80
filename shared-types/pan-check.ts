import { z } from 'zod';
import { localDaySchema } from './engine.ts';
import { estimateSchema } from './tuning.ts';

/** One day on which water flowed through a full pan for long enough. */
export const panDaySchema = z.strictObject({
  day: localDaySchema,
  /** Time of steady flow that was looked at [h]. */
  hours: z.number().positive(),
  /** Heat that the pan gave in that time, and what the pan of the reference days would have given [J]. */
  measuredJ: z.number(),
  expectedJ: z.number(),
  /** The one over the other, with what sensors' noise and the reference days leave open. */
  ratio: estimateSchema,
});
export type PanDay = z.infer<typeof panDaySchema>;

/** Some days together, and what they tell of the pan. */
export const panBlockSchema = z.strictObject({
  fromDay: localDaySchema,
  toDay: localDaySchema,
  /** Days among them that were of use. */
  days: z.int().min(1),
  hours: z.number().positive(),
  /** Heat over what the pan of the reference days would have given; 1 by definition for those themselves. */
  ratio: estimateSchema,
  /** Share of the net irradiance that is gathered in still air, no excess over the air. */
  efficiency: estimateSchema,
  /** Loss to the air without wind [W/m2K]; null where the days do not tell it apart from the efficiency. */
  lossWM2K: estimateSchema.nullable(),
  /** How much warmer the sheet stands than the water for each watt a square metre [K m2/W]; null without its sensor. */
  contactKM2W: estimateSchema.nullable(),
});
export type PanBlock = z.infer<typeof panBlockSchema>;

/** What a pan check may find. */
export const panFindingCodes = [
  'as-good',
  'gathers-less',
  'gathers-more',
  'loses-more',
  'loses-less',
  'contact-poorer',
  'contact-better',
  'shaded',
  'not-sure',
  'nothing-to-compare',
] as const;

export const panFindingSchema = z.strictObject({
  code: z.enum(panFindingCodes),
  /** What it is, by how much, and what to look at; in K, W/m2K and kWh. */
  text: z.string(),
});
export type PanFinding = z.infer<typeof panFindingSchema>;

/** Whether a pan is as good as it was. Heat is of each whole pan, coefficients are of its gross area. */
export const panCheckSchema = z.strictObject({
  site: z.string(),
  reference: panBlockSchema,
  /** Days after the reference in groups, the newest last; none where there are too few. */
  blocks: z.array(panBlockSchema),
  /** Every usable day, those of the reference among them, rising. */
  days: z.array(panDaySchema).min(1),
  /** Of the newest group against the reference; never empty, the gravest first. */
  findings: z.array(panFindingSchema).min(1),
  /** What was assumed, left out or cannot be told. */
  remarks: z.array(z.string()),
});
export type PanCheck = z.infer<typeof panCheckSchema>;
