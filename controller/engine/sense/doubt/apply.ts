import type { Channel } from '../../../../shared-types/channels.ts';
import type { TrustedReading, TrustedReadings } from '../../../../shared-types/readings.ts';
import type { Doubt, WatchMemory } from '../../state.ts';

/**
 * For so long a doubt keeps a reading from being used without new proof [ms]; a design choice. After it the
 * sensor is on trial: used again, and stopped again if it fails the same comparison. So no doubt lasts for
 * ever that only a running pump could lift.
 */
export const doubtMs = 24 * 3_600_000;

/** The readings with those of doubted sensors marked. The doubts of a healthy loop are none: nothing is made. */
export function withDoubts(
  readings: TrustedReadings,
  { doubts }: WatchMemory,
  runMs: number,
): TrustedReadings {
  let marked: { -readonly [C in Channel]?: TrustedReading } | null = null;
  for (const name in doubts) {
    const channel = name as Channel;
    const doubt = doubts[channel] as Doubt;
    const reading = readings[channel];
    if (reading === undefined || reading.quality === 'failed' || runMs - doubt.provenMs >= doubtMs) continue;
    marked ??= { ...readings };
    marked[channel] = { quality: 'doubtful', value: reading.value, ageMs: reading.ageMs, cause: doubt.cause };
  }
  return marked ?? readings;
}

/** True for a reading that is in doubt for longer than a moment. */
export function isDoubted(reading: TrustedReading | undefined): boolean {
  if (reading?.quality !== 'doubtful') return false;
  const { cause } = reading;
  return cause === 'stuck' || cause === 'noisy' || cause === 'disagrees';
}
