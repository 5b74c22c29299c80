import { type Channel, channelMeaning, channels } from '../../../shared-types/channels.ts';
import type { DayCurves } from '../../../shared-types/log.ts';
import { en } from '../text/en.ts';
import type { Scheme } from './colours.ts';

/** A curve: a channel, or one of the two that the controller adds. */
export type SeriesName = Channel | 'pumpFraction' | 'heatTodayJ';

/** Curves of one unit share a band of the chart with an axis of its own. */
export const bands = [
  'temperature',
  'radiation',
  'flow',
  'pump',
  'heat',
  'power',
  'level',
  'wind',
  'humidity',
] as const;
export type Band = (typeof bands)[number];

export interface SeriesLook {
  readonly band: Band;
  readonly colour: Readonly<Record<Scheme, string>>;
  /** Lengths of dash and gap [px]; none is a full line. Curves that share a band differ in it too. */
  readonly dash: readonly number[];
  readonly shownAtFirst: boolean;
}

const look = (
  band: Band,
  light: string,
  dark: string,
  dash: readonly number[] = [],
  shownAtFirst = false,
): SeriesLook => ({ band, colour: { light, dark }, dash, shownAtFirst });

/**
 * One look for each curve on every screen. Hues after Okabe and Ito, "Color universal design" (2008),
 * whose lighter members are darkened for the light scheme until they stand out 3:1.
 */
export const seriesLooks: Readonly<Record<SeriesName, SeriesLook>> = {
  panOutletC: look('temperature', '#d55e00', '#f0804a', [], true),
  panSheetC: look('temperature', '#1d1d1b', '#ececea', [2, 3], true),
  panInletC: look('temperature', '#a3527f', '#cc79a7', [8, 3]),
  storeTopC: look('temperature', '#00805e', '#2fc096', [14, 3], true),
  storeMiddleC: look('temperature', '#4a6f00', '#a3c14a', [10, 3, 2, 3]),
  storeBottomC: look('temperature', '#0072b2', '#56b4e9', [6, 3], true),
  reservoirC: look('temperature', '#7a5195', '#b79be0', [4, 2, 1, 2]),
  ambientC: look('temperature', '#6b6b66', '#a9a9a4', [1, 3], true),
  irradianceWM2: look('radiation', '#9a6700', '#e69f00', [], true),
  longWaveWM2: look('radiation', '#6b6b66', '#a9a9a4', [4, 3]),
  flowLMin: look('flow', '#0072b2', '#56b4e9', [], true),
  pumpFraction: look('pump', '#5c5c58', '#a9a9a4'),
  heatTodayJ: look('heat', '#b04a00', '#f0804a'),
  pumpPowerW: look('power', '#a3527f', '#cc79a7'),
  panLevelMm: look('level', '#0072b2', '#56b4e9'),
  storeLevelMm: look('level', '#00805e', '#2fc096', [6, 3]),
  reservoirLevelMm: look('level', '#7a5195', '#b79be0', [2, 3]),
  windMs: look('wind', '#5c5c58', '#a9a9a4'),
  humidityFraction: look('humidity', '#0072b2', '#56b4e9'),
};

export const seriesNames: readonly SeriesName[] = [...channels, 'pumpFraction', 'heatTodayJ'];

export function seriesTitle(name: SeriesName): string {
  if (name === 'pumpFraction') return en.charts.pump;
  return name === 'heatTodayJ' ? en.charts.heatToday : channelMeaning[name].title;
}

/** Values of a curve in the data's own units, or undefined when the site has none. */
export function seriesValues(curves: DayCurves, name: SeriesName): readonly (number | null)[] | undefined {
  if (name === 'pumpFraction') return curves.pumpFraction;
  return name === 'heatTodayJ' ? curves.heatTodayJ : curves.series[name];
}

/** Curves of which there is at least one value. */
export function presentSeries(curves: DayCurves): readonly SeriesName[] {
  return seriesNames.filter((name) => seriesValues(curves, name)?.some((value) => value !== null) ?? false);
}

/** Those that are drawn: shown at first unless hidden by hand, hidden at first unless shown by hand. */
export function drawnSeries(
  present: readonly SeriesName[],
  hidden: readonly string[],
  shown: readonly string[],
): readonly SeriesName[] {
  return present.filter((name) =>
    seriesLooks[name].shownAtFirst ? !hidden.includes(name) : shown.includes(name),
  );
}
