import type { z } from 'zod';
import {
  type AnswerMessage,
  answerMessageSchema,
  type SiteMessage,
  type SnapshotMessage,
  type StatusMessage,
  siteMessageSchema,
  snapshotMessageSchema,
  statusMessageSchema,
} from '../../shared-types/messages.ts';
import { firstIssue } from './replies.ts';
import { siteNameSchema } from './site-name.ts';

/** What a message on one of the controllers' topics turned out to be. */
export type Heard =
  | { readonly kind: 'snapshot'; readonly site: string; readonly message: SnapshotMessage }
  | { readonly kind: 'status'; readonly site: string; readonly message: StatusMessage }
  | { readonly kind: 'site'; readonly site: string; readonly message: SiteMessage }
  | { readonly kind: 'answer'; readonly site: string; readonly message: AnswerMessage }
  /** A retained message was taken back. */
  | { readonly kind: 'cleared'; readonly site: string; readonly what: Retained }
  | { readonly kind: 'malformed'; readonly reason: string };

export type Retained = 'snapshot' | 'status' | 'site';

/** Longest payload that is looked at [bytes]; a snapshot of a loop with every sensor takes some 10 kB. */
export const mostPayloadBytes = 262_144;

const schemas = {
  snapshot: snapshotMessageSchema,
  status: statusMessageSchema,
  site: siteMessageSchema,
  answer: answerMessageSchema,
} as const;
type Kind = keyof typeof schemas;

const isKind = (text: string): text is Kind => Object.hasOwn(schemas, text);

/** Reads one message. Never throws: whatever cannot be understood is malformed, and why. */
export function readMessage(topic: string, payload: Uint8Array): Heard {
  const parts = topic.split('/');
  const [root, name, kind] = parts;
  const site = siteNameSchema.safeParse(name);
  if (parts.length !== 3 || root !== 'flatwater' || !site.success || kind === undefined || !isKind(kind))
    return malformed('a topic of no site');
  if (payload.byteLength === 0)
    return kind === 'answer' ? malformed('empty') : { kind: 'cleared', site: site.data, what: kind };
  if (payload.byteLength > mostPayloadBytes) return malformed(`longer than ${mostPayloadBytes} bytes`);
  return checked(kind, site.data, payload);
}

function checked(kind: Kind, site: string, payload: Uint8Array): Heard {
  const json = parseJson(payload);
  if (json === undefined) return malformed('not JSON');
  const schema: z.ZodType = schemas[kind];
  const result = schema.safeParse(json);
  if (!result.success) return malformed(firstIssue(result.error));
  const heard = { kind, site, message: result.data } as Exclude<Heard, { kind: 'cleared' | 'malformed' }>;
  const says = namedSite(heard);
  return says === undefined || says === site ? heard : malformed(`it speaks of the site ${says}`);
}

/** The site that a message names inside, which has to be the one of its topic. */
function namedSite(heard: Exclude<Heard, { kind: 'cleared' | 'malformed' }>): string | undefined {
  if (heard.kind === 'snapshot') return heard.message.site;
  return heard.kind === 'site' ? heard.message.site.name : undefined;
}

const decoder = new TextDecoder('utf-8', { fatal: true });

/** @returns undefined when the bytes are no JSON in UTF-8. */
function parseJson(payload: Uint8Array): unknown {
  try {
    return JSON.parse(decoder.decode(payload)) as unknown;
  } catch {
    return undefined;
  }
}

const malformed = (reason: string): Heard => ({ kind: 'malformed', reason });
