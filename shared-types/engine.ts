import { z } from 'zod';
import { alarmCodeSchema, alarmSchema } from './alarms.ts';
import { commissioningSchema } from './commissioning.ts';
import { rawReadingsSchema, trustedReadingsSchema } from './readings.ts';
import { reasonSchema } from './reasons.ts';

export const localDaySchema = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a day such as 2031-06-21');

/** What the device says that its outputs do. */
export const feedbackSchema = z.strictObject({
  pumpFraction: z.number().min(0).max(1),
  drainOpen: z.boolean().nullable(),
  ageMs: z.number().min(0),
});
export type Feedback = z.infer<typeof feedbackSchema>;

/** What a person may ask of the engine. */
export const operationSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('run-pump'), minutes: z.number().min(1).max(120) }),
  z.strictObject({ kind: z.literal('empty') }),
  z.strictObject({ kind: z.literal('rest'), minutes: z.number().min(1).max(1440) }),
  z.strictObject({ kind: z.literal('automatic') }),
  z.strictObject({ kind: z.literal('commission') }),
  z.strictObject({ kind: z.literal('confirm') }),
  z.strictObject({ kind: z.literal('acknowledge'), alarm: alarmCodeSchema }),
  z.strictObject({
    kind: z.literal('shelve'),
    alarm: alarmCodeSchema,
    minutes: z.number().min(5).max(1440),
  }),
  z.strictObject({ kind: z.literal('unshelve'), alarm: alarmCodeSchema }),
]);
export type Operation = z.infer<typeof operationSchema>;

export const requestIdSchema = z.string().regex(/^[A-Za-z0-9-]{8,64}$/);

/**
 * A person's request as the engine hears it. `ageMs` is the time since it was issued, as far as the
 * clocks of both sides tell; `lifeMs` is how long it may be obeyed.
 */
export const operatorRequestSchema = z.strictObject({
  id: requestIdSchema,
  ageMs: z.number(),
  lifeMs: z.number().min(1000).max(60_000),
  operation: operationSchema,
});
export type OperatorRequest = z.infer<typeof operatorRequestSchema>;

/** All that one step is given besides its state, the site and the settings. */
export const engineInputSchema = z.strictObject({
  /** UTC instant of the step [ms]. Named in alarms and totals, never used as a timer. */
  nowMs: z.number(),
  /** Steady time since the previous step [ms]; null after a start, when nobody knows. */
  elapsedMs: z.number().min(0).nullable(),
  /** Day of the site's own calendar. */
  localDay: localDaySchema,
  readings: rawReadingsSchema,
  feedback: feedbackSchema.nullable(),
  request: operatorRequestSchema.nullable(),
});
export type EngineInput = z.infer<typeof engineInputSchema>;

export const outputsSchema = z.strictObject({
  /** Speed of the circulation pump, 0 (off) to 1 (full). */
  pumpFraction: z.number().min(0).max(1),
  /** True: the drain valve has no power and stands open. */
  drainOpen: z.boolean(),
  drainPumpOn: z.boolean(),
  exchangerPumpOn: z.boolean(),
  /** Only where the site has a heat dump: the return passes its radiator. */
  heatDumpOn: z.boolean().optional(),
});
export type Outputs = z.infer<typeof outputsSchema>;

export const phaseNames = ['empty', 'filling', 'circulating', 'resting', 'emptying', 'stopped'] as const;
export const phaseNameSchema = z.enum(phaseNames);
export type PhaseName = z.infer<typeof phaseNameSchema>;

/**
 * Running totals. None falls while a controller runs; a restart goes on from what the log holds, and begins anew where
 * no saved state is there or understood. Heat in joules, electricity in joules.
 */
export const totalsSchema = z.strictObject({
  heatHomeJ: z.number(),
  heatLostJ: z.number(),
  electricityJ: z.number(),
  pumpRunS: z.number(),
  starts: z.int(),
  fills: z.int(),
});
export type Totals = z.infer<typeof totalsSchema>;

export const meterSchema = z.strictObject({
  total: totalsSchema,
  /** The same since the local day began. */
  today: totalsSchema,
  /** Heat that now flows into the store [W], negative when it leaves; null when it cannot be told. */
  heatRateW: z.number().nullable(),
  flowLMin: z.number().nullable(),
  /**
   * True when `flowLMin` follows from the pump's speed instead of a measurement, or `heatRateW` from the
   * sheet instead of the outlet.
   */
  estimated: z.boolean(),
  /**
   * What `heatRateW` may be off by, as a share of it, by the formulas of EN 1434-1 and by what is known of
   * the sensors; null while no heat flows. An open loop does not conform to that standard.
   */
  errorFraction: z.number().nullable(),
  /**
   * How much of `total.heatHomeJ` rests on estimates [J]. What an emptied pan brings home always takes the
   * pan's volume from the site file, which does not count as one.
   */
  estimatedJ: z.number(),
});
export type Meter = z.infer<typeof meterSchema>;

/** What the engine holds true at this step. Null: it cannot be told. */
export const beliefSchema = z.strictObject({
  readings: trustedReadingsSchema,
  water: z.enum(['empty', 'part', 'full', 'unknown']),
  flowProven: z.boolean(),
  /** Pan (outlet, else sheet) minus store bottom. */
  differenceK: z.number().nullable(),
  /** What the pan outlet shows more than the store bottom when both are alike, and its standard deviation. */
  pair: z.strictObject({ offsetK: z.number(), sdK: z.number() }),
  netGainW: z.number().nullable(),
  /** What the rest of the day may bring, if it goes on as it was; no promise of the weather's. */
  dayPromiseJ: z.number().nullable(),
  /** Heat in the pan above the store bottom. */
  heatAtStakeJ: z.number().nullable(),
  timeToFreezingS: z.number().nullable(),
});
export type Belief = z.infer<typeof beliefSchema>;

export const answerCodes = [
  'accepted',
  'expired',
  'from-the-future',
  'repeated',
  'retained',
  'malformed',
  'hazard-forbids',
  'not-possible-here',
  'nothing-to-do',
  'settings-refused',
  'no-such-alarm',
  'not-shelvable',
] as const;
export const answerSchema = z.strictObject({
  id: z.string(),
  accepted: z.boolean(),
  code: z.enum(answerCodes),
  text: z.string(),
  /** Steady time after which what was asked ends by itself [ms]. */
  leaseMs: z.number().optional(),
});
export type Answer = z.infer<typeof answerSchema>;

/** What one step decided, and why. */
export const decisionSchema = z.strictObject({
  nowMs: z.number(),
  phase: phaseNameSchema,
  /** Steady time in this phase [ms]. */
  phaseForMs: z.number(),
  outputs: outputsSchema,
  reasons: z.strictObject({ phase: reasonSchema, pump: reasonSchema, drain: reasonSchema }),
  /** What a person asked and still holds; null in automatic. */
  lease: z
    .strictObject({ kind: z.enum(['run-pump', 'empty', 'rest', 'commission']), remainingMs: z.number() })
    .nullable(),
  alarms: z.array(alarmSchema),
  meter: meterSchema,
  belief: beliefSchema,
  /** A commissioning run, or what the newest one found; null when there was none. */
  commissioning: commissioningSchema.nullable().default(null),
  /** What was learnt about this loop, by name; a number's name ends in its unit. */
  learnt: z.record(z.string(), z.number()).default({}),
  answer: answerSchema.nullable(),
});
export type Decision = z.infer<typeof decisionSchema>;
