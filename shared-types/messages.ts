import { z } from 'zod';
import { answerSchema, decisionSchema, feedbackSchema, operationSchema, requestIdSchema } from './engine.ts';
import { rawReadingsSchema } from './readings.ts';
import { settingsPatchSchema, settingsSchema } from './settings.ts';
import { siteSchema } from './site.ts';

/** Version of every message below. A receiver ignores what carries another. */
export const messageSchemaVersion = 1;
const version = z.literal(messageSchemaVersion);

/** Topics of one site. Requests and outputs are never retained. */
export function siteTopics(site: string) {
  const root = `flatwater/${site}`;
  return {
    root,
    /** Whole decision of each step, retained. */
    snapshot: `${root}/snapshot`,
    /** Controller online or gone, retained; its last will. */
    status: `${root}/status`,
    /** Site and settings in force, retained. */
    site: `${root}/site`,
    request: `${root}/request`,
    answer: `${root}/answer`,
    /** Where the device of this project listens and speaks; other devices use what the site file says. */
    deviceReadings: `${root}/device/readings`,
    deviceOutputs: `${root}/device/outputs`,
    deviceFeedback: `${root}/device/feedback`,
    deviceStatus: `${root}/device/status`,
    deviceFault: `${root}/device/fault`,
  } as const;
}
export const allSitesTopics = {
  snapshot: 'flatwater/+/snapshot',
  status: 'flatwater/+/status',
  site: 'flatwater/+/site',
  answer: 'flatwater/+/answer',
} as const;

export const linkHealthSchema = z.strictObject({
  kind: z.enum(['mqtt', 'serial']),
  connected: z.boolean(),
  /** Messages that were taken, and that were ignored with the reason of the last one. */
  taken: z.int(),
  ignored: z.int(),
  lastIgnored: z.string().nullable(),
  /** Times that the link was lost since the start. */
  losses: z.int(),
});
export type LinkHealth = z.infer<typeof linkHealthSchema>;

/** What came from the device and went to it, as the link had it at a step. */
export const deviceExchangeSchema = z.strictObject({
  /** Readings before the engine judged them. */
  readings: rawReadingsSchema,
  feedback: feedbackSchema.nullable(),
  /** Steady time since outputs last left over the link [ms]; null: not once in this run. */
  renewedAgeMs: z.number().min(0).nullable(),
});
export type DeviceExchange = z.infer<typeof deviceExchangeSchema>;

export const snapshotMessageSchema = z.strictObject({
  schema: version,
  site: z.string(),
  /** Rises by one with each step of one run. */
  sequence: z.int(),
  run: z.int(),
  /** Seconds of the controller's clock in one second; other than 1 only beside a simulated loop. */
  clockSpeed: z.number().min(0),
  /** True beside a simulated loop, whose calendar is its own. False from a controller that does not tell it. */
  simulatedClock: z.boolean().default(false),
  settingsRevision: z.int(),
  link: linkHealthSchema,
  /** Null from a controller that does not tell it. */
  device: deviceExchangeSchema.nullable().default(null),
  log: z.strictObject({ writable: z.boolean(), remark: z.string().nullable() }),
  engineVersion: z.string(),
  decision: decisionSchema,
});
export type SnapshotMessage = z.infer<typeof snapshotMessageSchema>;

export const statusMessageSchema = z.strictObject({
  schema: version,
  state: z.enum(['online', 'stopped', 'lost']),
});
export type StatusMessage = z.infer<typeof statusMessageSchema>;

export const siteMessageSchema = z.strictObject({
  schema: version,
  site: siteSchema,
  siteRevision: z.int(),
  settings: settingsSchema,
  settingsRevision: z.int(),
});
export type SiteMessage = z.infer<typeof siteMessageSchema>;

/** What a monitor asks. `issuedAtMs` is the asker's UTC clock; the controller judges the age by its own. */
export const requestMessageSchema = z.strictObject({
  schema: version,
  id: requestIdSchema,
  issuedAtMs: z.number(),
  lifeMs: z.number().min(1000).max(60_000),
  who: z.string().max(80),
  operation: z.union([
    operationSchema,
    z.strictObject({ kind: z.literal('change-settings'), settings: settingsPatchSchema }),
  ]),
});
export type RequestMessage = z.infer<typeof requestMessageSchema>;
export type RequestedOperation = RequestMessage['operation'];

export const answerMessageSchema = z.strictObject({ schema: version, answer: answerSchema });
export type AnswerMessage = z.infer<typeof answerMessageSchema>;

/** What the controller tells a device to do, and for how long without being told again. */
export const outputMessageSchema = z.strictObject({
  schema: version,
  sequence: z.int(),
  pumpFraction: z.number().min(0).max(1),
  drainOpen: z.boolean(),
  drainPumpOn: z.boolean(),
  exchangerPumpOn: z.boolean(),
  /** Absent where the site has no heat dump, and then off. */
  heatDumpOn: z.boolean().optional(),
  /** The device falls to its safe state when it hears nothing new for this long. */
  expiresInMs: z.number().min(1000).max(600_000),
});
export type OutputMessage = z.infer<typeof outputMessageSchema>;
