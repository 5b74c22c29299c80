import type { Channel } from '../../../shared-types/channels.ts';
import type { TrustedReading, TrustedReadings } from '../../../shared-types/readings.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { type LooseReadings, readReading } from '../input.ts';
import type { ChannelMemory, EngineState } from '../state.ts';
import { failedReading, judgeReading, remember } from './judge-reading.ts';
import { sensorRulesOf } from './sensor-rules.ts';

export interface Sensed {
  readonly readings: TrustedReadings;
  readonly sensing: EngineState['sensing'];
}

/** Judges the reading of every sensor that the site has. */
export function sense(
  raw: LooseReadings,
  before: EngineState['sensing'],
  site: Site,
  settings: Settings,
  runMs: number,
): Sensed {
  const { sensors, unread } = sensorRulesOf(site);
  const readings: { -readonly [C in Channel]?: TrustedReading } = { ...unread };
  const sensing: { -readonly [C in Channel]?: ChannelMemory } = {};
  const staleAfterMs = settings.staleAfterS * 1000;
  for (const rules of sensors) {
    const { channel } = rules;
    const reading = readReading(raw[channel]);
    if (reading === undefined || reading.ageMs > staleAfterMs) {
      readings[channel] = failedReading(reading === undefined ? 'missing' : 'stale');
      continue;
    }
    const memory = remember(reading, before[channel], rules, runMs);
    readings[channel] = judgeReading(reading.ageMs, memory, runMs);
    sensing[channel] = memory;
  }
  return { readings, sensing };
}
