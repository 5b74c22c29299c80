import type { Channel } from '../../../shared-types/channels.ts';
import type { Outputs } from '../../../shared-types/engine.ts';
import { advance } from '../../plant/advance.ts';
import { numberOf } from '../../plant/makes.ts';
import { storeLayers } from '../../plant/parts.ts';
import type { PlantState } from '../../plant/state.ts';
import type { Traits } from '../../plant/traits.ts';
import { at } from '../../plant/water.ts';
import type { Conditions } from '../../weather/conditions.ts';
import { beginOf } from '../world/begin.ts';
import { panChannel } from '../world/follow.ts';
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
  const columns = channels.map((channel) => ({
    number: numberOf[channel],
    values: new Float64Array(minutes.count),
  }));
  const before = columns.map(() => Number.NaN);
  let moving: Pick<Outputs, 'pumpFraction' | 'drainOpen'> = plant.moving;
  let fineUntil = 0;
  for (let minute = 0; minute < minutes.count; minute++) {
    holdStore(plant, minutes.values, minute, errors);
    if (!stretch.sunMeasured && !inTheDark(stretch, minute)) holdPan(plant, stretch, minute, errors);
    const weather = trueConditions(conditions[minute] as Conditions, minute, errors);
    for (const { dtS, outputs } of minutes.drives[minute] ?? []) {
      if (outputs.pumpFraction !== moving.pumpFraction || outputs.drainOpen !== moving.drainOpen)
        fineUntil = minute + fineMin;
      moving = outputs;
      const parts = Math.ceil(dtS / (minute < fineUntil ? stepsS.fine : longestS));
      for (let part = 0; part < parts; part++) advance(plant, outputs, weather, dtS / parts);
    }
    for (const [index, { number, values }] of columns.entries()) {
      const now = plant.sensors.bodyValue[number] ?? Number.NaN;
      const earlier = before[index] as number;
      // A minute's mean lies between its ends.
      values[minute] = Number.isNaN(earlier) ? now : (earlier + now) / 2;
      before[index] = now;
    }
  }
  return Object.fromEntries(channels.map((channel, index) => [channel, columns[index]?.values]));
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

/** Brings the store's layers to straight lines between its sensors. */
function holdStore(
  { store }: PlantState,
  values: Readonly<Partial<Record<Channel, Float64Array>>>,
  minute: number,
  errors: Errors,
): void {
  const bottomC = (values.storeBottomC?.[minute] ?? Number.NaN) - errors.offset('storeBottomC');
  if (Number.isNaN(bottomC)) return;
  const topC = Math.max(bottomC, values.storeTopC?.[minute] ?? bottomC);
  const last = storeLayers - 1;
  for (let layer = 0; layer <= last; layer++) store.waterC[layer] = topC + (bottomC - topC) * (layer / last);
  if (Number.isNaN(at(store.waterC, 0))) store.waterC.fill(bottomC);
}

/** By day, without a sensor of the sun, the pan is where its thermometer says; a night begins from there. */
function holdPan({ pan }: PlantState, { span }: Stretch, minute: number, errors: Errors): void {
  const channel = panChannel(span);
  if (channel === undefined) return;
  const shownC = span.minutes.values[channel]?.[minute] ?? Number.NaN;
  if (Number.isNaN(shownC)) return;
  for (const lane of [pan.core, pan.edge]) {
    lane.sheetC.fill(shownC - errors.offset(channel));
    lane.waterC.fill(Math.max(0, shownC - errors.offset(channel)));
  }
}
