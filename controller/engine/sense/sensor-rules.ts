import { type Channel, channelMeaning } from '../../../shared-types/channels.ts';
import type { TrustedReadings } from '../../../shared-types/readings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { failedReading } from './judge-reading.ts';

/** What the readings of one sensor are judged by. */
export interface SensorRules {
  readonly channel: Channel;
  readonly least: number;
  readonly most: number;
  /** The median of three is taken, and jumps are noticed. False where every sample counts at once. */
  readonly smoothed: boolean;
}

/** The rules for every sensor of a site, in the site's order. */
interface SiteRules {
  readonly sensors: readonly SensorRules[];
  /** The readings while nothing was heard: a copy of them is filled at every step. */
  readonly unread: TrustedReadings;
}

type Sensor = NonNullable<Site['sensors'][Channel]>;

/** Where a spike is met by a hold time instead of the median, so that no time is lost. */
const countsAtOnce: ReadonlySet<Channel> = new Set(['flowLMin', 'pumpPowerW']);

/** Derived once for each site: it follows from the site alone. Whoever changes a site makes a new one. */
const rulesOfSites = new WeakMap<Site, SiteRules>();

export function sensorRulesOf(site: Site): SiteRules {
  const known = rulesOfSites.get(site);
  if (known !== undefined) return known;
  const sensors = Object.entries(site.sensors) as [Channel, Sensor][];
  const rules = {
    sensors: sensors.map(([channel, sensor]) => rulesOf(channel, sensor)),
    unread: Object.fromEntries(sensors.map(([channel]) => [channel, failedReading('missing')])),
  };
  rulesOfSites.set(site, rules);
  return rules;
}

function rulesOf(channel: Channel, sensor: Sensor): SensorRules {
  const { least, most } = channelMeaning[channel];
  return {
    channel,
    least: sensor.least ?? least,
    most: sensor.most ?? most,
    smoothed: !countsAtOnce.has(channel),
  };
}
