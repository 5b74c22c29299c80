import type { ReadingCause, TrustedReading } from '../../../shared-types/readings.ts';
import type { SoundReading } from '../input.ts';
import type { ChannelMemory, Sample } from '../state.ts';
import { scatterAfter } from './doubt/scatter.ts';
import { median } from './median.ts';
import type { SensorRules } from './sensor-rules.ts';

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

const nothing: ChannelMemory = {
  recent: [],
  arrivedMs: 0,
  changedMs: 0,
  scatter: 0,
  unreadable: 0,
  cause: null,
};

/** A reading of which nothing may be used or remembered. */
export function failedReading(cause: ReadingCause): TrustedReading {
  return { quality: 'failed', cause };
}

/** What has to be remembered of a channel once this reading of it is heard. */
export function remember(
  raw: SoundReading,
  before: ChannelMemory | undefined,
  rules: SensorRules,
  runMs: number,
): ChannelMemory {
  const arrivedMs = runMs - raw.ageMs;
  if (before !== undefined && arrivedMs <= before.arrivedMs + sameArrivalMs) return before;
  const known = before ?? nothing;
  const { recent, unreadable } = known;
  const { value } = raw;
  if (value === null) return withUnreadable(known, arrivedMs, raw.fault ?? 'unreadable');
  const cause = raw.fault ?? causeOf(value, rules);
  if (cause !== null) return withUnreadable(known, arrivedMs, cause);
  const sample = { value: value + 0, atMs: arrivedMs };
  // What was read before an outage says nothing about a jump after it.
  const alone = unreadable > 1 || !rules.smoothed;
  const samples = alone ? [sample] : withNewest(recent, sample);
  return {
    recent: samples,
    arrivedMs,
    // Alike to the last digit.
    changedMs: samples.at(-2)?.value === sample.value ? known.changedMs : arrivedMs,
    scatter: scatterAfter(known.scatter, samples),
    unreadable: 0,
    cause: null,
  };
}

function withUnreadable(known: ChannelMemory, arrivedMs: number, cause: ReadingCause): ChannelMemory {
  return { ...known, arrivedMs, unreadable: known.unreadable + 1, cause };
}

/** The newest two of the samples before, and this one. */
function withNewest(recent: readonly Sample[], sample: Sample): readonly Sample[] {
  const count = recent.length;
  if (count === 0) return [sample];
  const newest = recent[count - 1] as Sample;
  return count === 1 ? [newest, sample] : [recent[count - 2] as Sample, newest, sample];
}

/** Why such a number is no reading; null where it is one. */
function causeOf(value: number, { least, most }: SensorRules): ReadingCause | null {
  if (!Number.isFinite(value)) return 'not-a-number';
  return value < least || value > most ? 'out-of-range' : null;
}

/** How far the channel is to be trusted, by what is remembered of it. */
export function judgeReading(
  ageMs: number,
  { recent, unreadable, cause }: ChannelMemory,
  runMs: number,
): TrustedReading {
  if (cause !== null) {
    const newest = recent.at(-1);
    if (newest === undefined || unreadable > 1 || runMs - newest.atMs >= bridgeMs)
      return failedReading(cause);
    return { quality: 'doubtful', value: median(recent), ageMs, cause };
  }
  const value = median(recent);
  if (jumped(recent, value)) return { quality: 'doubtful', value, ageMs, cause: 'jumped' };
  return { quality: 'good', value, ageMs };
}

function jumped(recent: readonly Sample[], value: number): boolean {
  const count = recent.length;
  // The median of fewer is the newest itself.
  if (count < 3) return false;
  const newest = recent[count - 1] as Sample;
  const previous = recent[count - 2] as Sample;
  const limitK = jumpK + (jumpKS * (newest.atMs - previous.atMs)) / 1000;
  return Math.abs(newest.value - value) > limitK;
}
