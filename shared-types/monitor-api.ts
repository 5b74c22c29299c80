import { z } from 'zod';
import { allowedHeatSchema } from './allowed-heat.ts';
import { answerSchema, localDaySchema } from './engine.ts';
import { importMethods } from './foreign-log.ts';
import { heavyJobSchema, jobProgressSchema, jobSchema } from './jobs.ts';
import {
  dayCurvesSchema,
  daySummarySchema,
  eventKinds,
  logEventSchema,
  logFactsSchema,
  replayReportSchema,
} from './log.ts';
import {
  requestMessageSchema,
  siteMessageSchema,
  snapshotMessageSchema,
  statusMessageSchema,
} from './messages.ts';
import { panCheckSchema } from './pan-check.ts';
import { settingsSchema } from './settings.ts';
import { comparisonSchema, loopFitSchema, settingRangeSchema, sweepReportSchema } from './tuning.ts';
import { settingsRemarkSchema, whatIfReportSchema } from './what-if.ts';

/** Something that a person should know, as data: screens show it, commands print it. */
export const problemSchema = z.strictObject({
  severity: z.enum(['note', 'warning', 'error']),
  text: z.string(),
  tip: z.string().optional(),
});
export type Problem = z.infer<typeof problemSchema>;

const siteName = z.strictObject({ site: z.string() });
const siteDay = z.strictObject({ site: z.string(), day: localDaySchema });
/** As many days as two years have: more would be a typing error. */
const fewDays = z.array(localDaySchema).max(732);
const siteDays = z.strictObject({ site: z.string(), days: fewDays.min(1) });

/** Link of the monitor itself to the broker. */
export const hostStateSchema = z.strictObject({
  brokerConnected: z.boolean(),
  brokerUrl: z.string(),
  problems: z.array(problemSchema),
});
export type HostState = z.infer<typeof hostStateSchema>;

/** Everything the monitor holds about one site at this moment. `null`: not heard of yet. */
export const siteLiveSchema = z.strictObject({
  name: z.string(),
  status: statusMessageSchema.nullable(),
  site: siteMessageSchema.nullable(),
  snapshot: snapshotMessageSchema.nullable(),
  /** Time since the snapshot reached the host [ms, wall time]. */
  snapshotAgeMs: z.number().nullable(),
  /**
   * By how much the controller's calendar was ahead of the monitor's when a step was heard as it happened [ms];
   * null before, and beside a simulated loop whose clock is its own.
   */
  clockAheadMs: z.number().nullable().default(null),
});
export type SiteLive = z.infer<typeof siteLiveSchema>;

/**
 * What the screens may ask of the host: name, what is sent, what comes back.
 * The same map checks Electron's IPC and the browser's WebSocket on both sides.
 */
export const monitorMethods = {
  hostState: { params: z.strictObject({}), result: hostStateSchema },
  sites: { params: z.strictObject({}), result: z.array(siteLiveSchema) },
  days: { params: siteName, result: z.array(daySummarySchema) },
  day: {
    /** With `everyStep` nothing is thinned out: for a file, where a screen could not show it. */
    params: siteDay.extend({ everyStep: z.boolean().optional() }),
    result: dayCurvesSchema,
  },
  /** The last hours as curves, for the chart beside the live values. */
  recent: {
    params: z.strictObject({ site: z.string(), hours: z.number().min(0.1).max(48) }),
    result: dayCurvesSchema,
  },
  events: {
    params: z.strictObject({
      site: z.string(),
      limit: z.int().min(1).max(1000),
      /** Only of these kinds; without it, of every kind. */
      kinds: z.array(z.enum(eventKinds)).min(1).optional(),
    }),
    result: z.array(logEventSchema),
  },
  /** What the log holds: how much, and from when to when. */
  logFacts: { params: siteName, result: logFactsSchema },
  /** The newest day's heat beside what its weather allowed. */
  allowedHeat: { params: siteName, result: allowedHeatSchema },
  replay: { params: siteDay, result: replayReportSchema },
  /** Decides a logged day under other settings. `job` names it for the two calls that follow. */
  whatIf: {
    params: z.strictObject({
      site: z.string(),
      day: localDaySchema,
      settings: settingsSchema,
      job: jobSchema,
    }),
    result: whatIfReportSchema,
  },
  /** Lets a simulated loop live a logged day under other settings; `best` asks for the best possible as well. */
  compareDay: {
    params: siteDay.extend({ settings: settingsSchema, best: z.boolean(), job: jobSchema }),
    result: comparisonSchema,
  },
  /** Tries ranges of settings over many logged days. */
  sweep: {
    params: siteDays.extend({ ranges: z.array(settingRangeSchema).min(1).max(3), job: jobSchema }),
    result: sweepReportSchema,
  },
  /** Fits the simulated loop to logged days. A fit that converged is kept beside the log from then on. */
  fit: { params: siteDays.extend({ job: jobSchema }), result: loopFitSchema },
  /** Whether the pan is as good as on the reference days; without any of those: as on the oldest of the days. */
  panCheck: { params: siteDays.extend({ referenceDays: fewDays, job: jobSchema }), result: panCheckSchema },
  /** The fit that is kept beside the log; null where there is none. */
  keptFit: { params: siteName, result: loopFitSchema.nullable() },
  /** The long job that runs for a site, whoever began it; null when none does. */
  heavyJob: { params: siteName, result: heavyJobSchema.nullable() },
  /** How far a job is; null when there is none of that name. */
  jobProgress: { params: z.strictObject({ job: jobSchema }), result: jobProgressSchema.nullable() },
  cancelJob: { params: z.strictObject({ job: jobSchema }), result: z.boolean() },
  /** What is to be known of settings before they are asked for. */
  settingsRemarks: {
    params: z.strictObject({ site: z.string(), settings: settingsSchema }),
    result: z.array(settingsRemarkSchema),
  },
  ...importMethods,
  request: {
    params: z.strictObject({ site: z.string(), operation: requestMessageSchema.shape.operation }),
    result: answerSchema,
  },
} as const;

export type MonitorMethod = keyof typeof monitorMethods;
export type MonitorParams<M extends MonitorMethod> = z.input<(typeof monitorMethods)[M]['params']>;
export type MonitorResult<M extends MonitorMethod> = z.output<(typeof monitorMethods)[M]['result']>;

/** What the host tells without being asked. */
export const monitorEventSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('host'), host: hostStateSchema }),
  z.strictObject({ kind: z.literal('live'), live: siteLiveSchema }),
  /** The broker holds nothing of this site any more. */
  z.strictObject({ kind: z.literal('gone'), site: z.string() }),
]);
export type MonitorEvent = z.infer<typeof monitorEventSchema>;

/** What came of a call: a result, or a problem in words. */
export type MonitorReply<M extends MonitorMethod> =
  | { ok: true; result: MonitorResult<M> }
  | { ok: false; problem: Problem };

/** The one door between screens and host. */
export interface MonitorApi {
  call<M extends MonitorMethod>(method: M, params: MonitorParams<M>): Promise<MonitorReply<M>>;
  /** Hands every event to the listener until the returned function is called. */
  listen(listener: (event: MonitorEvent) => void): () => void;
}

/** A call as it travels. */
export const monitorCallSchema = z.strictObject({
  id: z.int(),
  method: z.enum(Object.keys(monitorMethods) as [MonitorMethod, ...MonitorMethod[]]),
  params: z.unknown(),
});
export type MonitorCall = z.infer<typeof monitorCallSchema>;

/** What the host sends over a wire: the reply to a call, or an event. */
export const monitorWireSchema = z.union([
  z.strictObject({ id: z.int(), ok: z.literal(true), result: z.unknown() }),
  z.strictObject({ id: z.int(), ok: z.literal(false), problem: problemSchema }),
  z.strictObject({ event: monitorEventSchema }),
]);
export type MonitorWire = z.infer<typeof monitorWireSchema>;
