import { z } from 'zod';
import { absorbedSchema } from './absorbed.ts';
import { channels } from './channels.ts';
import { localDaySchema } from './engine.ts';
import { dayCurvesSchema } from './log.ts';
import { settingNames, settingsSchema } from './settings.ts';

/** A number and the band in which it lies with 95 % by what is known of the loop. `low <= value <= high`. */
export const estimateSchema = z.strictObject({ value: z.number(), low: z.number(), high: z.number() });
export type Estimate = z.infer<typeof estimateSchema>;

/** One thing of the loop that a fit looked for. */
export const fittedParameterSchema = z.strictObject({
  /** A name of the loop's traits. */
  name: z.string(),
  unit: z.string(),
  value: z.number(),
  /** Standard error, in the unit of the value; null where the value was held instead of fitted. */
  standardError: z.number().nullable(),
  /** Why it was held, in plain words; null where it was fitted. */
  heldBecause: z.string().nullable(),
});
export type FittedParameter = z.infer<typeof fittedParameterSchema>;

/** What a sensor shows more than is true, as far as a fit can tell. */
export const sensorErrorSchema = z.strictObject({
  channel: z.enum(channels),
  /** By a constant in the channel's unit (of temperatures: K), or by a share of what there is. */
  kind: z.enum(['offset', 'share']),
  value: z.number(),
  standardError: z.number(),
});
export type SensorError = z.infer<typeof sensorErrorSchema>;

/** What the days of a log say of the loop that they were logged on. Kept beside the log. */
export const loopFitSchema = z.strictObject({
  schemaVersion: z.literal(1),
  site: z.string(),
  days: z.array(localDaySchema).min(1),
  /** False: nothing below may be used as a number; `verdicts` says why. */
  converged: z.boolean(),
  parameters: z.array(fittedParameterSchema),
  /** None in fits that were kept before errors of sensors were told. */
  sensorErrors: z.array(sensorErrorSchema).default([]),
  /** Covariance of the fitted ones among `parameters` and then of the sensors' errors, in their order and units; square. */
  covariance: z.array(z.array(z.number())),
  /** Each measured channel against the fitted loop. */
  residuals: z.array(
    z.strictObject({
      channel: z.string(),
      samples: z.int(),
      /** Root mean square and mean of what was measured less what the fitted loop gives, in the channel's unit. */
      rms: z.number(),
      mean: z.number(),
      /** Correlation of each residual with the one before, -1 to 1: near 1 the loop lacks something. */
      lagOneCorrelation: z.number(),
    }),
  ),
  /** What the data can and cannot tell, in plain words. */
  verdicts: z.array(z.string()),
});
export type LoopFit = z.infer<typeof loopFitSchema>;

/** Where a part of the world came from in which other settings were tried. */
export const originSchema = z.enum(['measured', 'reconstructed', 'assumed']);
export type Origin = z.infer<typeof originSchema>;

/** What a day brought, or would have brought. */
export const dayOutcomeSchema = z.strictObject({
  /** What came home less what was taken from the store, as everywhere in a comparison and in a sweep [J]. */
  heatHomeJ: estimateSchema,
  electricityJ: estimateSchema,
  pumpRunS: estimateSchema,
  starts: estimateSchema,
  fills: estimateSchema,
  /** How far above 0 °C the coldest water in the pan stayed [K]; null when there was no water or no reading. */
  aboveFreezingK: estimateSchema.nullable(),
  /** How far below the liner's limit the hottest of the pan stayed [K]; null without a reading. */
  belowLinerLimitK: estimateSchema.nullable(),
});
export type DayOutcome = z.infer<typeof dayOutcomeSchema>;

/** A stretch of the day for which the log cannot vouch, since the loop would have gone where it never was. */
export const leftGroundSchema = z.strictObject({ fromMs: z.number(), toMs: z.number(), text: z.string() });

/** A logged day lived once more by a simulated loop: under the settings of then, and under others. */
export const comparisonSchema = z.strictObject({
  day: localDaySchema,
  settingsThen: settingsSchema,
  settingsTried: settingsSchema,
  /** What the log itself says of the day; null what another logger did not tell. */
  logged: z.strictObject({
    heatHomeJ: z.number().nullable(),
    electricityJ: z.number().nullable(),
    pumpRunS: z.number(),
    starts: z.int(),
    fills: z.int().nullable(),
  }),
  /** The same settings in the simulated loop: how well that loop stands in for the real one. */
  base: dayOutcomeSchema,
  tried: dayOutcomeSchema,
  /** Tried less base [J]; its band is narrower than those of the two, which err together. */
  heatGainJ: estimateSchema,
  /**
   * About the most that perfect foresight could bring home on that day, rather too much [J]; null when it was not
   * asked for.
   */
  bestPossibleJ: z.number().nullable(),
  /** Curves of both sides. */
  curves: z.strictObject({ base: dayCurvesSchema, tried: dayCurvesSchema }),
  /** Where the loop's parameters came from. */
  loop: z.strictObject({ origin: originSchema, text: z.string() }),
  /** Where each part of the world came from. */
  world: z.strictObject({
    irradiance: originSchema,
    air: originSchema,
    wind: originSchema,
    sky: originSchema,
    draws: originSchema,
  }),
  /** Told by the pan's heat balance where no sensor measured the sun; null where one did. */
  absorbed: absorbedSchema.nullable(),
  leftGround: z.array(leftGroundSchema),
  remarks: z.array(z.string()),
});
export type Comparison = z.infer<typeof comparisonSchema>;

/** Values of one setting to be tried, both ends included. */
export const settingRangeSchema = z
  .strictObject({
    setting: z.enum(settingNames),
    from: z.number(),
    to: z.number(),
    values: z.int().min(1).max(50),
  })
  .refine(({ from, to, values }) => values > 1 || from === to, 'one value needs from and to to be the same');
export type SettingRange = z.infer<typeof settingRangeSchema>;

/** Settings tried over many days, and what the days brought in sum. */
export const sweepPointSchema = z.strictObject({
  /** What differs from the settings in force, by name. */
  change: z.partialRecord(z.enum(settingNames), z.number()),
  heatHomeJ: estimateSchema,
  /** Heat more than under the settings in force, over the same days [J]. */
  heatGainJ: estimateSchema,
  electricityJ: z.number(),
  starts: z.number(),
  fills: z.number(),
  /** The least of all days, as of a day's outcome. */
  aboveFreezingK: z.number().nullable(),
  /** The most ice that the pan held on any day [kg]: with any, the coldest water is at 0 °C. */
  mostIceKg: z.number().min(0),
  belowLinerLimitK: z.number().nullable(),
  /** Time for which the log cannot vouch, since the loop would have gone where it never was on its day [s]. */
  beyondLogS: z.number().min(0),
  /** True: no other point brings at least as much heat with no more starts, fills and electricity. */
  onFront: z.boolean(),
});
export type SweepPoint = z.infer<typeof sweepPointSchema>;

export const sweepReportSchema = z.strictObject({
  days: z.array(localDaySchema).min(1),
  settingsInForce: settingsSchema,
  /** The first is the settings in force, with an empty change. */
  points: z.array(sweepPointSchema).min(1),
  /** Changes that the table of settings refuses, with its words. */
  refused: z.array(z.strictObject({ change: sweepPointSchema.shape.change, why: z.string() })),
  /** Which point is advised and why; never applied by itself. `point` 0: leave things as they are. */
  advice: z.strictObject({ point: z.int(), text: z.string() }),
  remarks: z.array(z.string()),
});
export type SweepReport = z.infer<typeof sweepReportSchema>;
