import { type Channel, channelMeaning } from '../../../shared-types/channels.ts';
import type { RawReadings, TrustedReading, TrustedReadings } from '../../../shared-types/readings.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Sensor, Site } from '../../../shared-types/site.ts';
import type { EngineState } from '../state.ts';
import { judgeReading } from './judge-reading.ts';

/** Where a spike is met by a hold time instead of the median, so that no time is lost. */
const countsAtOnce: ReadonlySet<Channel> = new Set(['flowLMin', 'pumpPowerW']);

export interface Sensed {
  readonly readings: TrustedReadings;
  readonly sensing: EngineState['sensing'];
}

/** Judges the reading of every sensor that the site has. */
export function sense(
  raw: RawReadings,
  before: EngineState['sensing'],
  site: Site,
  settings: Settings,
  runMs: number,
): Sensed {
  const readings: Partial<Record<Channel, TrustedReading>> = {};
  const sensing: { -readonly [C in Channel]?: EngineState['sensing'][C] } = {};
  for (const [name, sensor] of Object.entries(site.sensors)) {
    const channel = name as Channel;
    const { reading, memory } = judgeReading(raw[channel], before[channel], {
      ...rangeOf(channel, sensor),
      staleAfterMs: settings.staleAfterS * 1000,
      smoothed: !countsAtOnce.has(channel),
      runMs,
    });
    readings[channel] = reading;
    if (memory !== undefined) sensing[channel] = memory;
  }
  return { readings, sensing };
}

function rangeOf(channel: Channel, sensor: Sensor) {
  const { least, most } = channelMeaning[channel];
  return { least: sensor.least ?? least, most: sensor.most ?? most };
}
