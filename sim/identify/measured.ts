import { type Channel, channelMeaning } from '../../shared-types/channels.ts';
import type { Stretch } from './model/stretch.ts';
import { isMeasured } from './world/read-fraction.ts';

/** Channels that were read in enough of every day. */
export function measuredOf(stretches: readonly Stretch[]): Channel[] {
  return readOf(stretches).filter((channel) => stretches.every(({ span }) => isMeasured(channel, span)));
}

/** Channels that were read at all. */
function readOf(stretches: readonly Stretch[]): Channel[] {
  return [...new Set(stretches.flatMap(({ span }) => Object.keys(span.minutes.values) as Channel[]))];
}

/** Where a day lacks them something is assumed for them, which errs by more than they do. */
const assumedElse: readonly Channel[] = ['windMs', 'longWaveWM2'];

/** Channels whose sensors' errors reach the fit. */
export function erringOf(stretches: readonly Stretch[]): Channel[] {
  const measured = measuredOf(stretches);
  return readOf(stretches).filter((channel) => !assumedElse.includes(channel) || measured.includes(channel));
}

const weather: readonly Channel[] = [
  'irradianceWM2',
  'ambientC',
  'windMs',
  'humidityFraction',
  'longWaveWM2',
];

/** Sensors of the weather that are there and tell too little of it. */
export function notMeasuredWords(stretches: readonly Stretch[]): string[] {
  const measured = measuredOf(stretches);
  return readOf(stretches)
    .filter((channel) => weather.includes(channel) && !measured.includes(channel))
    .map((channel) => {
      const days = stretches.filter(({ span }) => !isMeasured(channel, span)).map(({ span }) => span.day);
      return `${channelMeaning[channel].title} counts as not measured: it was read in less than half of ${days.join(', ')}.`;
    });
}
