/**
 * The measuring points of a loop. One closed list; each name ends in its unit.
 *
 * Plain data without a library behind it, so that the engine may use it at run time.
 */

export const temperatureChannels = [
  'panOutletC',
  'panSheetC',
  'panInletC',
  'storeBottomC',
  'storeMiddleC',
  'storeTopC',
  'reservoirC',
  'ambientC',
] as const;

export const otherChannels = [
  'irradianceWM2',
  'windMs',
  'humidityFraction',
  'longWaveWM2',
  'flowLMin',
  'panLevelMm',
  'storeLevelMm',
  'reservoirLevelMm',
  'pumpPowerW',
] as const;

export const channels = [...temperatureChannels, ...otherChannels] as const;

export type Channel = (typeof channels)[number];

/** Units in which a reading may stand inside the software. Links convert into these. */
export type ChannelUnit = 'C' | 'WM2' | 'Ms' | 'Fraction' | 'LMin' | 'Mm' | 'W';

export interface ChannelMeaning {
  readonly unit: ChannelUnit;
  readonly title: string;
  readonly meaning: string;
  /** What such a sensor can truthfully report, in the channel's unit; outside it the reading has failed. */
  readonly least: number;
  readonly most: number;
}

/**
 * What each channel means and the range that physics allows it.
 * The ranges are design choices, wide enough for a dry sheet in stagnation and a clear winter night.
 */
export const channelMeaning: Readonly<Record<Channel, ChannelMeaning>> = {
  panOutletC: {
    unit: 'C',
    title: 'Pan outlet',
    meaning: 'Water where it leaves the pan',
    least: -30,
    most: 120,
  },
  panSheetC: { unit: 'C', title: 'Sheet', meaning: 'Black sheet, middle of the pan', least: -40, most: 150 },
  panInletC: {
    unit: 'C',
    title: 'Pan inlet',
    meaning: 'Water where it enters the pan',
    least: -30,
    most: 120,
  },
  storeBottomC: {
    unit: 'C',
    title: 'Store bottom',
    meaning: 'Water that the pump draws',
    least: -5,
    most: 110,
  },
  storeMiddleC: { unit: 'C', title: 'Store middle', meaning: 'Half-way up the store', least: -5, most: 110 },
  storeTopC: {
    unit: 'C',
    title: 'Store top',
    meaning: 'Water that is drawn off first',
    least: -5,
    most: 110,
  },
  reservoirC: {
    unit: 'C',
    title: 'Reservoir',
    meaning: 'Water in the drain-back reservoir',
    least: -5,
    most: 110,
  },
  ambientC: { unit: 'C', title: 'Air', meaning: 'Outside air in the shade', least: -50, most: 60 },
  irradianceWM2: {
    unit: 'WM2',
    title: 'Sun',
    meaning: 'Global irradiance in the plane of the pan',
    least: -20,
    most: 1600,
  },
  windMs: { unit: 'Ms', title: 'Wind', meaning: 'Wind speed over the pan', least: 0, most: 60 },
  humidityFraction: {
    unit: 'Fraction',
    title: 'Humidity',
    meaning: 'Relative humidity of the air',
    least: 0,
    most: 1.05,
  },
  longWaveWM2: {
    unit: 'WM2',
    title: 'Sky',
    meaning: 'Long-wave irradiance from above',
    least: 50,
    most: 700,
  },
  flowLMin: {
    unit: 'LMin',
    title: 'Flow',
    meaning: 'Volume flow through the pan',
    least: -200,
    most: 500,
  },
  panLevelMm: { unit: 'Mm', title: 'Pan level', meaning: 'Depth of water in the pan', least: -20, most: 500 },
  storeLevelMm: {
    unit: 'Mm',
    title: 'Store level',
    meaning: 'Depth of water in the store',
    least: -20,
    most: 10_000,
  },
  reservoirLevelMm: {
    unit: 'Mm',
    title: 'Reservoir level',
    meaning: 'Depth of water in the drain-back reservoir',
    least: -20,
    most: 10_000,
  },
  pumpPowerW: {
    unit: 'W',
    title: 'Pump power',
    meaning: 'Electric power drawn by the pump',
    least: -5,
    most: 5_000,
  },
};
