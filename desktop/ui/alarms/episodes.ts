import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import {
  type AlarmCode,
  type AlarmPriority,
  alarmCodeSchema,
  alarmPrioritySchema,
} from '../../../shared-types/alarms.ts';
import type { LogEvent } from '../../../shared-types/log.ts';

/** Kinds of events that tell of alarms. */
export const alarmEventKinds = [
  'alarm-raised',
  'alarm-returned',
  'alarm-acknowledged',
  'alarm-shelved',
  'alarm-unshelved',
] as const satisfies readonly LogEvent['kind'][];

/** One alarm from its raising to its return, as far as the log tells. Instants in UTC ms. */
export interface Episode {
  readonly code: AlarmCode;
  readonly priority: AlarmPriority;
  readonly title: string;
  readonly text: string;
  /** Null: before what was read of the log. */
  readonly raisedMs: number | null;
  readonly acknowledgedMs: number | null;
  readonly returnedMs: number | null;
  readonly shelved: number;
  /** Instant of the newest event of it. */
  readonly newestMs: number;
}

/**
 * Folds events into episodes, the newest first.
 *
 * @param events - Of alarms, the newest first. One of an alarm that this version does not know is left out.
 */
export function episodesOf(events: readonly LogEvent[]): readonly Episode[] {
  const open = new Map<AlarmCode, Episode>();
  const closed: Episode[] = [];
  for (const event of events.toReversed()) {
    const code = alarmCodeSchema.safeParse(event.values['alarm']).data;
    if (code === undefined) continue;
    const before = open.get(code);
    const isNew = before === undefined || event.kind === 'alarm-raised';
    if (isNew && before !== undefined) closed.push(before);
    open.set(code, withEvent(isNew ? beginning(code, event) : before, event));
  }
  return [...closed, ...open.values()].sort((a, b) => beginMs(b) - beginMs(a));
}

const beginMs = ({ raisedMs, newestMs }: Episode) => raisedMs ?? newestMs;

function beginning(code: AlarmCode, { text, values, atMs }: LogEvent): Episode {
  const { title, priority } = alarmCatalogue[code];
  return {
    code,
    priority: alarmPrioritySchema.safeParse(values['priority']).data ?? priority,
    title,
    text,
    raisedMs: null,
    acknowledgedMs: null,
    returnedMs: null,
    shelved: 0,
    newestMs: atMs,
  };
}

function withEvent(before: Episode, { kind, atMs }: LogEvent): Episode {
  const episode = { ...before, newestMs: atMs };
  switch (kind) {
    case 'alarm-raised':
      return { ...episode, raisedMs: atMs };
    case 'alarm-returned':
      return { ...episode, returnedMs: atMs };
    case 'alarm-acknowledged':
      return { ...episode, acknowledgedMs: atMs };
    case 'alarm-shelved':
      return { ...episode, shelved: episode.shelved + 1 };
    default:
      return episode;
  }
}

/** Days back from now within which an alarm was raised, or all. */
export const episodeSpans = ['1', '7', '30', 'all'] as const;
export type EpisodeSpan = (typeof episodeSpans)[number];

export interface EpisodeFilter {
  readonly priority: AlarmPriority | 'any';
  readonly words: string;
  readonly span: EpisodeSpan;
}

const dayMs = 86_400_000;

/** The episodes that fit; every word has to be somewhere in title or text. */
export function fittingEpisodes(
  episodes: readonly Episode[],
  { priority, words, span }: EpisodeFilter,
  nowMs: number,
): readonly Episode[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  const fromMs = span === 'all' ? Number.NEGATIVE_INFINITY : nowMs - Number(span) * dayMs;
  return episodes.filter((episode) => {
    const said = `${episode.title} ${episode.text}`.toLowerCase();
    return (
      (priority === 'any' || episode.priority === priority) &&
      beginMs(episode) >= fromMs &&
      wanted.every((word) => said.includes(word))
    );
  });
}
