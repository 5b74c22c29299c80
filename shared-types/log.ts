import { z } from 'zod';
import { alarmCodeSchema } from './alarms.ts';
import { engineInputSchema, localDaySchema, outputsSchema, phaseNameSchema, totalsSchema } from './engine.ts';
import { channelSchema } from './readings.ts';
import { reasonCodeSchema } from './reasons.ts';
import { decisionCountSchema, sideSchema } from './what-if.ts';

/** What of a decision is kept for every step: all that a replay has to meet again. */
export const outcomeSchema = z.strictObject({
  phase: phaseNameSchema,
  outputs: outputsSchema,
  reasons: z.strictObject({ phase: reasonCodeSchema, pump: reasonCodeSchema, drain: reasonCodeSchema }),
  alarms: z.array(alarmCodeSchema),
  /** Channels whose reading was not to be used. */
  failed: z.array(channelSchema),
  total: totalsSchema,
});
export type Outcome = z.infer<typeof outcomeSchema>;

const unknownSchema = z.literal('unknown');
const loggedReasonSchema = z.union([reasonCodeSchema, unknownSchema]);

/**
 * The same as it stands in a log. A step that was taken in from another logger carries its pump and drain; what
 * that logger did not know is `unknown`, and its totals count from the beginning of its day.
 */
export const loggedOutcomeSchema = outcomeSchema.extend({
  phase: z.union([phaseNameSchema, unknownSchema]),
  reasons: z.strictObject({ phase: loggedReasonSchema, pump: loggedReasonSchema, drain: loggedReasonSchema }),
});
export type LoggedOutcome = z.infer<typeof loggedOutcomeSchema>;

/** One step: what the engine was given and what it decided. */
export const logRecordSchema = z.strictObject({
  /** Number of the step, rising by one within a run of the controller. */
  step: z.int().min(0),
  /** Run of the controller; a restart begins a new one. */
  run: z.int().min(1),
  siteRevision: z.int().min(1),
  settingsRevision: z.int().min(1),
  input: engineInputSchema,
  outcome: loggedOutcomeSchema,
});
export type LogRecord = z.infer<typeof logRecordSchema>;

/** A step that a controller decided. */
export type DecidedRecord = Omit<LogRecord, 'outcome'> & { outcome: Outcome };

export const eventKinds = [
  'controller-started',
  'controller-stopped',
  'phase-changed',
  'alarm-raised',
  'alarm-returned',
  'alarm-acknowledged',
  'alarm-shelved',
  'alarm-unshelved',
  'request-answered',
  'settings-changed',
  'commissioning-done',
  'commissioning-ended',
  'link-lost',
  'link-back',
  'message-ignored',
  'log-damaged',
] as const;

/** Something that happened, worth a line of its own. */
export const logEventSchema = z.strictObject({
  atMs: z.number(),
  kind: z.enum(eventKinds),
  text: z.string(),
  values: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])),
});
export type LogEvent = z.infer<typeof logEventSchema>;

/** A local day in short. Null: the days of another logger do not tell it. */
export const daySummarySchema = z.strictObject({
  day: localDaySchema,
  steps: z.int(),
  firstMs: z.number(),
  lastMs: z.number(),
  heatHomeJ: z.number().nullable(),
  heatLostJ: z.number().nullable(),
  electricityJ: z.number().nullable(),
  pumpRunS: z.number(),
  starts: z.int(),
  fills: z.int().nullable(),
  alarms: z.int().nullable(),
  /** Taken in from another logger's file. */
  imported: z.literal(true).optional(),
  /** Share of the day's wall time that the log covers, 0 to 1. */
  coveredFraction: z.number(),
});
export type DaySummary = z.infer<typeof daySummarySchema>;

/** What a log holds. */
export const logFactsSchema = z.strictObject({
  /** Size of the file and of what is still to be moved into it [bytes]. */
  sizeBytes: z.number(),
  /** Instants of the oldest and the newest step [UTC ms]; null while there is none. */
  firstMs: z.number().nullable(),
  lastMs: z.number().nullable(),
  days: z.int(),
  steps: z.int(),
  runs: z.int(),
});
export type LogFacts = z.infer<typeof logFactsSchema>;

export const phaseSpanSchema = z.strictObject({
  phase: phaseNameSchema,
  reason: reasonCodeSchema,
  fromMs: z.number(),
  toMs: z.number(),
});
export type PhaseSpan = z.infer<typeof phaseSpanSchema>;

/** A day's curves, column by column; null where nothing good was read, so that a chart shows a gap. */
export const dayCurvesSchema = z.strictObject({
  day: localDaySchema,
  atMs: z.array(z.number()),
  series: z.partialRecord(channelSchema, z.array(z.number().nullable())),
  pumpFraction: z.array(z.number()),
  heatTodayJ: z.array(z.number().nullable()),
  phases: z.array(phaseSpanSchema),
  events: z.array(logEventSchema),
});
export type DayCurves = z.infer<typeof dayCurvesSchema>;

/** What a replay of a span says. */
export const replayReportSchema = z.strictObject({
  /** Local days of the first and of the last step. */
  day: localDaySchema,
  lastDay: localDaySchema,
  /** Instants of the first and of the last step [UTC ms]. */
  fromMs: z.number(),
  toMs: z.number(),
  steps: z.int(),
  /** Steps that could not be replayed, since what they need is no longer in the log. */
  leftOut: z.int(),
  same: z.boolean(),
  differences: z.int(),
  /** Those among them in which more differs than the running totals, which carry on what once differed. */
  decidedOtherwise: z.int(),
  firstDifference: z
    .strictObject({
      atMs: z.number(),
      step: z.int(),
      fields: z.array(z.string()),
      logged: outcomeSchema,
      replayed: outcomeSchema,
      loggedReason: z.string(),
      replayedReason: z.string(),
      input: engineInputSchema,
    })
    .nullable(),
  /** Steps that differ, by the name of the field; a step counts in each of its fields. */
  byField: z.record(z.string(), z.int()),
  /** Steps that decided otherwise, by the reason on either side; the most frequent first, 20 at most. */
  byCause: z.array(z.strictObject({ logged: z.string(), replayed: z.string(), steps: z.int() })),
  /** Stretches in which the loop would have been driven otherwise, 100 at most. */
  parted: z.array(
    z.strictObject({
      fromMs: z.number(),
      /** Last step of the stretch. */
      toMs: z.number(),
      steps: z.int(),
      /** Both sides at its first step. */
      logged: sideSchema,
      replayed: sideSchema,
    }),
  ),
  /** How many stretches there are, with those that are not listed. */
  partings: z.int(),
  /** What each side asked of the loop. */
  asked: z.strictObject({ logged: decisionCountSchema, replayed: decisionCountSchema }),
  logged: totalsSchema,
  replayed: totalsSchema,
  engineThen: z.array(z.string()),
  engineNow: z.string(),
  /** Anything that keeps the replay from being complete, in plain words. */
  remarks: z.array(z.string()),
});
export type ReplayReport = z.infer<typeof replayReportSchema>;
