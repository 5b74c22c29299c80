import type { Channel } from '../../../shared-types/channels.ts';
import { channelMeaning } from '../../../shared-types/channels.ts';
import type { TrustedReading } from '../../../shared-types/readings.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { en } from '../text/en.ts';

/** A reading as a screen shows it. A failed one has no number to show. */
export interface ReadingView {
  readonly title: string;
  readonly look: 'fresh' | 'old' | 'doubtful' | 'failed';
  /** The number with its unit, or the word that stands in its place. */
  readonly value: string;
  /** Why it is not simply good, or how old it is. */
  readonly note: string | undefined;
}

/**
 * @param lagMs - Time by which the whole snapshot lags behind the loop; 0 while snapshots come in.
 * @param freshForMs - Age up to which a reading counts as of now.
 */
export function viewReading(
  channel: Channel,
  reading: TrustedReading,
  formats: NumberFormats,
  { lagMs, freshForMs }: { readonly lagMs: number; readonly freshForMs: number },
): ReadingView {
  const { title, unit } = channelMeaning[channel];
  if (reading.quality === 'failed')
    return { title, look: 'failed', value: en.live.readings.failed, note: en.causes[reading.cause] };
  const value = inLine(formats.channel(unit, reading.value));
  const ageMs = reading.ageMs + lagMs;
  const age = ageMs > freshForMs ? en.live.readings.old(durationText(ageMs)) : undefined;
  if (reading.quality === 'doubtful') {
    const cause = `${en.live.readings.doubtful}: ${en.causes[reading.cause]}`;
    return { title, look: 'doubtful', value, note: age === undefined ? cause : `${cause}, ${age}` };
  }
  return { title, look: age === undefined ? 'fresh' : 'old', value, note: age };
}
