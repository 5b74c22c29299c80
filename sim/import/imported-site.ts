import { type Channel, type ChannelUnit, channelMeaning } from '../../shared-types/channels.ts';
import { importedName, isImportedName } from '../../shared-types/foreign-log.ts';
import type { SensorUnit } from '../../shared-types/sensor-units.ts';
import { type Sensor, type Site, siteSchema } from '../../shared-types/site.ts';

const titleEnding = ' (imported)';

/** Units in which values stand inside. */
const innerUnits: Readonly<Record<ChannelUnit, SensorUnit>> = {
  C: 'C',
  WM2: 'W/m2',
  Ms: 'm/s',
  Fraction: 'fraction',
  LMin: 'L/min',
  Mm: 'mm',
  W: 'W',
};

/**
 * The loop as another logger saw it: the same parts, with the sensors whose values were imported. Those that no
 * site can do without stay.
 */
export function importedSite(base: Site, channels: readonly Channel[]): Site {
  const sensors: Site['sensors'] = {};
  for (const channel of channels) sensors[channel] = base.sensors[channel] ?? importedSensor(channel);
  const hasPan = sensors.panOutletC !== undefined || sensors.panSheetC !== undefined;
  const needed: readonly Channel[] = hasPan ? ['storeBottomC'] : ['storeBottomC', 'panOutletC', 'panSheetC'];
  for (const channel of needed) {
    const sensor = sensors[channel] ?? base.sensors[channel];
    if (sensor !== undefined) sensors[channel] = sensor;
  }
  const name = importedName(base.name);
  const title = isImportedName(base.name)
    ? base.title
    : base.title.slice(0, 80 - titleEnding.length) + titleEnding;
  return siteSchema.parse({ ...base, name, title, sensors });
}

function importedSensor(channel: Channel): Sensor {
  const place = `imported.${channel}`;
  const unit = innerUnits[channelMeaning[channel].unit];
  return { topic: place, key: place, unit, factor: 1, offset: 0 };
}
