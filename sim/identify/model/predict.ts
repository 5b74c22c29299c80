import type { Channel } from '../../../shared-types/channels.ts';
import type { Outputs } from '../../../shared-types/engine.ts';
import { advance } from '../../plant/advance.ts';
import { makes, numberOf } from '../../plant/makes.ts';
import { storeLayers } from '../../plant/parts.ts';
import type { PlantState } from '../../plant/state.ts';
import type { Traits } from '../../plant/traits.ts';
import type { Conditions } from '../../weather/conditions.ts';
import { beginOf } from '../world/begin.ts';
import { panChannel } from '../world/pan-channel.ts';
import type { LoggedSpan } from '../world/span.ts';
import { inTheDark, type Stretch } from './stretch.ts';

/** What sensors and sky are off by, as one point of the search has it. */
export interface Errors {
  /** What a channel shows more than is true, in its unit; 0 where nothing is known. */
  offset(channel: Channel): number;
  /** By what share a channel shows more than is true. */
  scale(channel: Channel): number;
  /** What the sky sends more than the formula says, in each minute of the stretch [W/m2]. */
  skyWM2(minute: number): number;
}

/** Longest step [s]: that of a search, and that by which its result is put right. */
export const stepsS = { coarse: 60, fine: 15 } as const;
/** After pump or drain changed, water is on the move: so long the steps are fine [min]. A design choice. */
const fineMin = 5;

/** True values of the loop at the channels' places, minute by minute. */
export type Predicted = Readonly<Partial<Record<Channel, Float64Array>>>;

/** One stretch that holds for ever. */
const noDraws = { fromMs: -1, stepMs: 1e15, wantedKgS: [0] };

/**
 * Drives a plant with what pump and drain did, under the weather as it was measured.
 *
 * The store is held to what its sensors show, so that neither draws nor the store's losses matter to the pan.
 *
 * @param channels - What is asked for. @param longestS - Longest step of the plant, to 60 s.
 */
export function predict(
  stretch: Stretch,
  traits: Partial<Traits>,
  errors: Errors,
  channels: readonly Channel[],
  longestS: number,
): Predicted {
  const { span, conditions } = stretch;
  const { minutes } = span;
  const plant = beginOf(span, traits, noDraws);
  const columns = channels.map((channel) => minuteMeans(plant, channel, minutes));
  let moving: Pick<Outputs, 'pumpFraction' | 'drainOpen'> = plant.moving;
  /** It stands for the sun where that is not measured. */
  const panThermometer = stretch.sunMeasured ? undefined : panChannel(span);
  let fineUntil = 0;
  for (let minute = 0; minute < minutes.count; minute++) {
    const weather = trueConditions(conditions[minute] as Conditions, minute, errors);
    const shown = (channel: Channel) =>
      trueC(channel, minutes.values[channel]?.[minute] ?? Number.NaN, weather, errors);
    holdStore(plant, shown('storeTopC'), shown('storeBottomC'));
    if (panThermometer !== undefined && !inTheDark(stretch, minute)) holdPan(plant, shown(panThermometer));
    for (const { dtS, outputs } of minutes.drives[minute] ?? []) {
      if (outputs.pumpFraction !== moving.pumpFraction || outputs.drainOpen !== moving.drainOpen)
        fineUntil = minute + fineMin;
      moving = outputs;
      const parts = Math.ceil(dtS / (minute < fineUntil ? stepsS.fine : longestS));
      for (let part = 0; part < parts; part++) {
        advance(plant, outputs, weather, dtS / parts);
        for (const column of columns) column.take(dtS / parts);
      }
    }
    for (const column of columns) column.end(minute);
  }
  return Object.fromEntries(channels.map((channel, index) => [channel, columns[index]?.values]));
}

/** Makes of what a sensor feels what a log would hold of it: the mean of the readings of each minute. */
function minuteMeans({ sensors }: PlantState, channel: Channel, { count, steps }: LoggedSpan['minutes']) {
  const number = numberOf[channel];
  const values = new Float64Array(count);
  let now = Number.NaN;
  let begin = Number.NaN;
  let sum = 0;
  let sumS = 0;
  return {
    values,
    /** One step of the plant is over. */
    take(dtS: number): void {
      const earlier = now;
      now = sensors.bodyValue[number] ?? Number.NaN;
      if (Number.isNaN(earlier)) begin = now;
      sum += (dtS * ((Number.isNaN(earlier) ? now : earlier) + now)) / 2;
      sumS += dtS;
    },
    end(minute: number): void {
      // Readings stand at the ends of the steps of the log: their mean is that of the time half a step later.
      values[minute] = sum / sumS + (now - begin) / (2 * Math.max(1, steps[minute] as number));
      begin = now;
      sum = 0;
      sumS = 0;
    },
  };
}

function trueConditions(measured: Conditions, minute: number, errors: Errors): Conditions {
  const sunFactor = 1 / (1 + errors.scale('irradianceWM2'));
  return {
    ...measured,
    beamWM2: measured.beamWM2 * sunFactor,
    diffuseWM2: measured.diffuseWM2 * sunFactor,
    irradianceWM2: measured.irradianceWM2 * sunFactor,
    airC: measured.airC - errors.offset('ambientC'),
    windMs: measured.windMs / (1 + errors.scale('windMs')),
    longWaveWM2: measured.longWaveWM2 - errors.offset('longWaveWM2') + errors.skyWM2(minute),
  };
}

/** What a thermometer truly stands in, without its offset and what its make takes from the air [°C]. */
function trueC(channel: Channel, shownC: number, { airC }: Conditions, errors: Errors): number {
  const { airFraction } = makes[numberOf[channel]] as (typeof makes)[number];
  return (shownC - errors.offset(channel) - airFraction * airC) / (1 - airFraction);
}

/**
 * Brings the store to what its ends show: the lower half to the bottom, so that all that the loop draws within the minute
 * is as warm as the bottom was seen, and straight up from there.
 */
function holdStore({ store }: PlantState, shownTopC: number, bottomC: number): void {
  if (Number.isNaN(bottomC)) return;
  const topC = Number.isNaN(shownTopC) ? bottomC : Math.max(bottomC, shownTopC);
  const last = storeLayers - 1;
  for (let layer = 0; layer <= last; layer++)
    store.waterC[layer] = bottomC + (topC - bottomC) * Math.max(0, 1 - (2 * layer) / last);
}

/** By day, without a sensor of the sun, the pan is where its thermometer says; a night begins from there. */
function holdPan({ pan }: PlantState, shownC: number): void {
  if (Number.isNaN(shownC)) return;
  for (const lane of [pan.core, pan.edge]) {
    lane.sheetC.fill(shownC);
    lane.waterC.fill(Math.max(0, shownC));
  }
}
