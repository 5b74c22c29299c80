import { type Channel, channels } from '../../shared-types/channels.ts';

/** What kind of sensor sits at a channel. Numbers chosen in the usual order of size of cheap sensors. */
export interface SensorMake {
  /** First-order lag [s]. */
  readonly lagS: number;
  /** Standard deviation of the noise, in the channel's unit. */
  readonly noise: number;
  /** The least step that is shown is one over this many. */
  readonly stepsPerUnit: number;
  /** What one sensor may be off for ever, to either side: by a constant in the channel's unit, and by a share. */
  readonly offset: number;
  readonly scale: number;
  /** Share of the air's temperature that a sensor outside on pipe or sheet shows. */
  readonly airFraction: number;
  /** The least that it can show. */
  readonly least: number;
}

/**
 * A cheap digital thermometer. Half a kelvin to either side lets two of them disagree by up to one; its step
 * is 1/16 K.
 */
const dipped: SensorMake = {
  lagS: 20,
  noise: 0.03,
  stepsPerUnit: 16,
  offset: 0.5,
  scale: 0,
  airFraction: 0.005,
  least: -1e9,
};
const strappedOn: SensorMake = { ...dipped, airFraction: 0.02 };
/** An instrument that shows nothing when there is nothing, and errs by a share of what there is. */
const meter: SensorMake = {
  lagS: 1,
  noise: 0.05,
  stepsPerUnit: 10,
  offset: 0,
  scale: 0.02,
  airFraction: 0,
  least: -1e9,
};
const float: SensorMake = { ...meter, lagS: 3, noise: 1, stepsPerUnit: 1, offset: 5, scale: 0 };

const models: Readonly<Record<Channel, SensorMake>> = {
  panOutletC: strappedOn,
  panSheetC: strappedOn,
  panInletC: strappedOn,
  storeBottomC: dipped,
  storeMiddleC: dipped,
  storeTopC: dipped,
  reservoirC: dipped,
  ambientC: { ...dipped, lagS: 120, airFraction: 0 },
  irradianceWM2: { ...meter, lagS: 2, noise: 1.5, stepsPerUnit: 1, scale: 0.05 },
  windMs: { ...meter, lagS: 2, scale: 0.05, least: 0 },
  humidityFraction: { ...meter, lagS: 20, noise: 0.003, stepsPerUnit: 200, offset: 0.02, scale: 0, least: 0 },
  longWaveWM2: { ...meter, lagS: 10, noise: 1, stepsPerUnit: 1, offset: 5 },
  flowLMin: meter,
  panLevelMm: { ...float, noise: 0.2, stepsPerUnit: 2, offset: 1 },
  storeLevelMm: float,
  reservoirLevelMm: float,
  pumpPowerW: { ...meter, noise: 0.1, stepsPerUnit: 2 },
};

/** A make for every channel, in the order of the list of channels. */
export const makes: readonly SensorMake[] = channels.map((channel) => models[channel]);

/** Where a channel stands in that order. */
export const numberOf = Object.fromEntries(channels.map((channel, number) => [channel, number])) as Readonly<
  Record<Channel, number>
>;
