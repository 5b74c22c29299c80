import type { RawReading, ReadingCause, TrustedReading } from '../../../shared-types/readings.ts';
import type { ChannelMemory, Sample } from '../state.ts';
import { median } from './median.ts';

/** What a reading is judged by. */
export interface ReadingRules {
  readonly least: number;
  readonly most: number;
  readonly staleAfterMs: number;
  /** The median of three is taken, and jumps are noticed. False where every sample counts at once. */
  readonly smoothed: boolean;
  readonly runMs: number;
}

export interface Judged {
  readonly reading: TrustedReading;
  readonly memory: ChannelMemory | undefined;
}

/** A single unreadable sample is bridged for less than this [ms]; a design choice. */
const bridgeMs = 10_000;
/** Two arrivals this close are one sample seen twice: ages come in whole milliseconds. */
const sameArrivalMs = 20;
/**
 * A sample this far from the median is doubtful: 10 K and 1 K for each second. The dry sheet with its
 * 4 kJ/m2K gains a quarter of that in full sun, and loses less than that when water reaches it.
 */
const jumpK = 10;
const jumpKS = 1;

const nothing: ChannelMemory = { recent: [], arrivedMs: 0, unreadable: 0, cause: null };

/** Raw reading to trusted reading, with what has to be remembered of it. */
export function judgeReading(
  raw: RawReading | undefined,
  memory: ChannelMemory | undefined,
  rules: ReadingRules,
): Judged {
  if (raw === undefined) return failed('missing');
  if (raw.ageMs > rules.staleAfterMs) return failed('stale');
  const kept = remember(raw, memory, rules);
  return { reading: read(raw, kept, rules), memory: kept };
}

function failed(cause: ReadingCause): Judged {
  return { reading: { quality: 'failed', cause }, memory: undefined };
}

function remember(raw: RawReading, before: ChannelMemory | undefined, rules: ReadingRules): ChannelMemory {
  const arrivedMs = rules.runMs - raw.ageMs;
  if (before !== undefined && arrivedMs <= before.arrivedMs + sameArrivalMs) return before;
  const { recent, unreadable } = before ?? nothing;
  const cause = unreadableCause(raw, rules);
  if (cause !== null || raw.value === null)
    return { recent, arrivedMs, unreadable: unreadable + 1, cause: cause ?? 'unreadable' };
  // What was read before an outage says nothing about a jump after it.
  const before2 = unreadable > 1 || !rules.smoothed ? [] : recent.slice(-2);
  return {
    recent: [...before2, { value: raw.value + 0, atMs: arrivedMs }],
    arrivedMs,
    unreadable: 0,
    cause: null,
  };
}

function unreadableCause({ value, fault }: RawReading, { least, most }: ReadingRules): ReadingCause | null {
  if (fault !== undefined) return fault;
  if (value === null) return 'unreadable';
  if (!Number.isFinite(value)) return 'not-a-number';
  return value < least || value > most ? 'out-of-range' : null;
}

function read({ ageMs }: RawReading, memory: ChannelMemory, { runMs }: ReadingRules): TrustedReading {
  const { recent, unreadable, cause } = memory;
  const newest = recent.at(-1);
  if (cause !== null) {
    if (newest === undefined || unreadable > 1 || runMs - newest.atMs >= bridgeMs)
      return { quality: 'failed', cause };
    return { quality: 'doubtful', value: median(recent), ageMs, cause };
  }
  const value = median(recent);
  if (jumped(recent, value)) return { quality: 'doubtful', value, ageMs, cause: 'jumped' };
  return { quality: 'good', value, ageMs };
}

function jumped(recent: readonly Sample[], value: number): boolean {
  const newest = recent.at(-1);
  const previous = recent.at(-2);
  if (newest === undefined || previous === undefined) return false;
  const limitK = jumpK + (jumpKS * (newest.atMs - previous.atMs)) / 1000;
  return Math.abs(newest.value - value) > limitK;
}
