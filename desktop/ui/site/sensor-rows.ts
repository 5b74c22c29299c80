import { type Channel, channelMeaning, channels } from '../../../shared-types/channels.ts';
import type { RawReading, TrustedReading } from '../../../shared-types/readings.ts';
import type { Sensor, Site } from '../../../shared-types/site.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { en } from '../text/en.ts';

const text = en.site.sensors;

/** What came in for a channel before it was judged, with its age; undefined when nobody tells. */
export interface RawView {
  readonly value: string;
  readonly age: string;
}

/**
 * @param raw - Undefined: never heard.
 * @param lagMs - Time by which the snapshot itself is old.
 */
export function viewRaw(
  channel: Channel,
  raw: RawReading | undefined,
  formats: NumberFormats,
  lagMs: number,
): RawView {
  if (raw === undefined) return { value: text.neverHeard, age: '' };
  const age = durationText(raw.ageMs + lagMs);
  if (raw.fault !== undefined) return { value: en.causes[raw.fault], age };
  if (raw.value === null) return { value: text.noNumber, age };
  return { value: inLine(formats.channel(channelMeaning[channel].unit, raw.value)), age };
}

/** Age of a reading in words, without that of the raw one. */
export function ageText(reading: TrustedReading, lagMs: number): string {
  return reading.quality === 'failed' ? '' : durationText(reading.ageMs + lagMs);
}

/** Where a sensor's value comes from, and what is done with it. */
export function sourceText({ topic, pointer, key, unit, factor, offset }: Sensor): string {
  const place = key ?? `${topic ?? ''} ${pointer ?? ''}`.trim();
  const changes = [
    factor === 1 ? '' : text.factor(String(factor)),
    offset === 0 ? '' : text.offset(String(offset)),
  ];
  return [text.source(place, text.units[unit] ?? unit), ...changes].filter(Boolean).join(', ');
}

/** The channels that a site has, and those that it could have but has not. */
export function fittedChannels(site: Site): {
  readonly fitted: readonly Channel[];
  readonly missing: readonly Channel[];
} {
  const useful = channels.filter(
    (channel) => site.plumbing === 'reservoir' || !reservoirChannels.has(channel),
  );
  return {
    fitted: channels.filter((channel) => site.sensors[channel] !== undefined),
    missing: useful.filter((channel) => site.sensors[channel] === undefined),
  };
}

const reservoirChannels: ReadonlySet<Channel> = new Set(['reservoirC', 'reservoirLevelMm']);
