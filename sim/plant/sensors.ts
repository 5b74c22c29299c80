import { type Channel, channelMeaning } from '../../shared-types/channels.ts';
import { hashFraction, hashNormal } from '../weather/random.ts';
import type { Conditions } from '../weather/weather.ts';
import type { Fault } from './faults.ts';
import { fillFraction } from './pan.ts';
import type { PlantState } from './state.ts';
import { type Cell, totalKg } from './water.ts';

/** What a sensor gives: a number in the channel's unit, or why there is none. */
export type SensorValue = number | 'open-circuit' | 'short-circuit';
export type SensorValues = Partial<Record<Channel, SensorValue>>;

interface SensorMake {
  /** First-order lag [s]. */
  readonly lagS: number;
  /** Standard deviation of the noise, and the least step that is shown, in the channel's unit. */
  readonly noise: number;
  readonly step: number;
}

/** Cheap digital thermometers strapped on or dipped in; numbers chosen, the step is 1/16 K. */
const thermometer: SensorMake = { lagS: 20, noise: 0.03, step: 0.0625 };
const makes: Readonly<Record<Channel, SensorMake>> = {
  panOutletC: thermometer,
  panSheetC: thermometer,
  panInletC: thermometer,
  storeBottomC: thermometer,
  storeMiddleC: thermometer,
  storeTopC: thermometer,
  reservoirC: thermometer,
  ambientC: { lagS: 120, noise: 0.03, step: 0.0625 },
  irradianceWM2: { lagS: 2, noise: 1.5, step: 1 },
  windMs: { lagS: 2, noise: 0.05, step: 0.1 },
  humidityFraction: { lagS: 20, noise: 0.003, step: 0.005 },
  longWaveWM2: { lagS: 10, noise: 1, step: 1 },
  flowLMin: { lagS: 1, noise: 0.05, step: 0.1 },
  panLevelMm: { lagS: 3, noise: 0.2, step: 0.5 },
  storeLevelMm: { lagS: 3, noise: 1, step: 1 },
  reservoirLevelMm: { lagS: 3, noise: 1, step: 1 },
  pumpPowerW: { lagS: 1, noise: 0.1, step: 0.5 },
};

/** The true value at a channel's place, in the channel's unit. Without a reservoir its channels read the store. */
export function trueValue(state: PlantState, weather: Conditions, channel: Channel): number {
  const { parts, pan, store, reservoir } = state;
  const layer = (share: number) => waterC(store, Math.round(share * (store.length - 1)));
  const storeShare = totalKg(store) / parts.store.brimKg;
  switch (channel) {
    case 'panOutletC':
      return outletC(state, weather.airC);
    case 'panSheetC':
      return pan[pan.length >> 1]?.sheetC ?? weather.airC;
    case 'panInletC':
      return waterC(state.supply, state.supply.length - 1);
    case 'storeBottomC':
      return layer(1);
    case 'storeMiddleC':
      return layer(0.5);
    case 'storeTopC':
      return layer(0);
    case 'reservoirC':
      return reservoir?.waterC ?? layer(1);
    case 'ambientC':
      return weather.airC;
    case 'irradianceWM2':
      return weather.irradianceWM2;
    case 'windMs':
      return weather.windMs;
    case 'humidityFraction':
      return weather.humidityFraction;
    case 'longWaveWM2':
      return weather.longWaveWM2;
    case 'flowLMin':
      return state.moving.flowLMin;
    case 'panLevelMm':
      return fillFraction(pan, parts) * parts.pan.depthMm;
    case 'storeLevelMm':
      return storeShare * parts.store.heightM * 1000;
    case 'reservoirLevelMm':
      return ((reservoir?.massKg ?? 0) / parts.reservoir.startKg) * parts.reservoir.heightM * 1000;
    case 'pumpPowerW':
      return state.moving.pumpPowerW;
  }
}

function waterC(cells: readonly Cell[], index: number): number {
  return cells[index]?.waterC ?? 0;
}

/** The outlet's thermometer: in water while there is any, else half warmed by the sheet, half by the air. */
function outletC(state: PlantState, airC: number): number {
  const cell = state.pan[state.pan.length - 1];
  if (cell === undefined) return airC;
  const wet = Math.min(1, fillFraction(state.pan, state.parts) * 10);
  return wet * cell.waterC + (1 - wet) * 0.5 * (cell.sheetC + airC);
}

/** Lets the body of every sensor follow the truth over one step. A new sensor starts at the truth. */
export function followSensors(state: PlantState, weather: Conditions, dtS: number): void {
  for (const channel of state.parts.channels) {
    const truth = trueValue(state, weather, channel);
    const sensor = state.sensors[channel];
    if (sensor === undefined) state.sensors[channel] = { bodyValue: truth, shownValue: truth };
    else sensor.bodyValue += (truth - sensor.bodyValue) * -Math.expm1(-dtS / makes[channel].lagS);
  }
}

/**
 * Reads every sensor once, with noise, quantised, and with its faults. Silent sensors are left out.
 * The noise depends on the seed and on how many readings were taken before.
 */
export function readSensors(state: PlantState, seed: number, faults: readonly Fault[] = []): SensorValues {
  const values: SensorValues = {};
  const reading = state.readingCount++;
  if (faults.some((fault) => fault.name === 'device-silent')) return values;
  for (const [stream, channel] of state.parts.channels.entries()) {
    const sensor = state.sensors[channel];
    if (sensor === undefined) continue;
    const own = faults.filter((fault) => fault.channel === channel);
    const draw = { seed, stream: 100 + stream, index: reading };
    const value = faultyValue(channel, sensor.bodyValue, sensor.shownValue, own, draw);
    if (typeof value === 'number') sensor.shownValue = value;
    if (value !== undefined) values[channel] = value;
  }
  return values;
}

interface Draw {
  readonly seed: number;
  readonly stream: number;
  readonly index: number;
}

function faultyValue(
  channel: Channel,
  bodyValue: number,
  shownValue: number,
  faults: readonly Fault[],
  { seed, stream, index }: Draw,
): SensorValue | undefined {
  const make = makes[channel];
  let value = bodyValue + make.noise * hashNormal(seed, stream, index);
  for (const fault of faults)
    switch (fault.name) {
      case 'sensor-open':
        return 'open-circuit';
      case 'sensor-short':
        return 'short-circuit';
      case 'sensor-silent':
        return undefined;
      case 'sensor-stuck':
        return shownValue;
      case 'sensor-offset':
        value += fault.size;
        break;
      case 'sensor-noisy':
        value += fault.size * hashNormal(seed, stream + 100, index);
        break;
      case 'sensor-spiking':
        if (hashFraction(seed, stream + 200, index) < 0.1) value += fault.size;
        break;
      case 'device-silent':
      case 'pump-dead':
      case 'pump-stuck-on':
      case 'half-flow':
      case 'drain-stuck-shut':
      case 'drain-stuck-open':
        break;
    }
  return quantised(value, make.step, channel);
}

/** A value on the sensor's scale. What cannot be negative (wind, humidity) is not shown as such. */
function quantised(value: number, step: number, channel: Channel): number {
  const shown = Math.round(value / step) * step;
  const least = channelMeaning[channel].least === 0 ? 0 : -1e9;
  // A step of 0.1 or 0.005 has no exact double; the tail is cut so that messages stay short. Adding
  // nought turns the negative nought, which JSON does not keep, into the plain one.
  return Math.round(Math.max(least, shown) * 1e4) / 1e4 + 0;
}
