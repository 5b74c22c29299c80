import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { fillFraction } from '../../../sim/plant/pan.ts';
import { type PlantState, panLiquidKg } from '../../../sim/plant/state.ts';
import { sum } from '../../../sim/plant/water.ts';
import { isKeptWarm, panChannels, type Verdict } from '../invariants/invariant.ts';
import { ails, has, lies } from './excuses.ts';
import type { Moment } from './life.ts';

/** A promise that the plant itself is asked about, not the engine. */
export interface Truth {
  readonly name: string;
  readonly promise: string;
  readonly exceptions: readonly string[];
  readonly watch: (site: Site, settings: Settings) => (moment: Moment) => Verdict;
}

/** How long something has lasted without a break [s]. */
function lasting(): (holds: boolean, atS: number) => number {
  let sinceS: number | null = null;
  return (holds, atS) => {
    sinceS = holds ? (sinceS ?? atS) : null;
    return sinceS === null ? 0 : atS - sinceS;
  };
}

const drainExceptions = [
  'A pan without a drain.',
  'While, or for six hours after, the drain or the way through the store is shut or narrow, the pump does not stop, a drain pump has no power or nobody to tell it, or a pan thermometer says other than what is.',
];

/** For so long what a fault did may still be seen [s]. */
const aftermathS = 6 * 3600;

/** True while the pan may stand full for no fault of the engine, and for a while after. */
function mayBeHeld(site: Site): (moment: Moment) => boolean {
  let heldS = Number.NEGATIVE_INFINITY;
  let beforeS = 0;
  return ({ faults, atS }) => {
    const untold = site.drain === 'drain-pump' && (has(faults, 'power-cut') || atS - beforeS > 60);
    beforeS = atS;
    const held = has(faults, 'drain-stuck-shut', 'drain-slow', 'pump-stuck-on', 'store-valve-shut');
    if (held || untold || lies(faults, panChannels)) heldS = atS;
    return site.drain === 'none' || atS - heldS < aftermathS;
  };
}

const noIce: Truth = {
  name: 'no-ice',
  promise: 'A tenth of the water of a full pan never stands in it as ice.',
  exceptions: drainExceptions,
  watch: (site) => {
    const held = mayBeHeld(site);
    return (moment) => {
      const { pan, parts } = moment.plant;
      const iceKg = sum(pan.core.iceKg) + sum(pan.edge.iceKg);
      if (held(moment) || iceKg <= 0.1 * parts.pan.fullKg) return;
      return `${iceKg.toFixed(1)} kg of ice`;
    };
  },
};

const coldWaterLeaves: Truth = {
  name: 'cold-water-leaves',
  promise: 'A pan holds more than half of its water at a mean below 1 °C for no longer than the drain time.',
  exceptions: drainExceptions,
  watch: (site, settings) => {
    const held = mayBeHeld(site);
    const last = lasting();
    return (moment) => {
      const cold = !held(moment) && fillFraction(moment.plant) > 0.5 && meanPanC(moment.plant) < 1;
      const forS = last(cold, moment.atS);
      return forS > settings.drainTimeS ? `full and cold for ${forS} s` : undefined;
    };
  },
};

function meanPanC(plant: PlantState): number {
  const { core, edge } = plant.pan;
  let kgC = 0;
  for (const lane of [core, edge])
    for (let i = 0; i < lane.massKg.length; i++)
      kgC += (lane.massKg[i] as number) * (lane.waterC[i] as number);
  return kgC / panLiquidKg(plant);
}

const shutBeforePumping: Truth = {
  name: 'shut-before-pumping',
  promise: 'The pump runs into a drain valve that stands open for no longer than 30 s.',
  exceptions: ['While the pump does not stop when it is told to, or the device says nothing.'],
  watch: (site) => {
    const last = lasting();
    return ({ plant: { moving }, faults, atS }) => {
      const open = site.drain === 'drain-valve' && moving.pumpFraction > 0 && moving.drainOpen;
      const forS = last(open && !has(faults, 'pump-stuck-on', 'device-silent'), atS);
      return forS > 20 ? `into an open drain for ${forS + 10} s` : undefined;
    };
  },
};

const wetPump: Truth = {
  name: 'wet-pump',
  promise:
    'In a loop with a flow meter a circulating pump that turns moves water, or stands within 20 s and a step.',
  exceptions: [
    'While the pump does not stop when it is told to, or nothing is heard of the flow.',
    'A pump without power or with a broken motor turns nothing that could run dry.',
  ],
  watch: (site) => {
    const last = lasting();
    return ({ plant: { moving }, before, faults, atS }) => {
      const seen = site.sensors.flowLMin !== undefined && !ails(faults, ['flowLMin']);
      const stops = !has(faults, 'pump-stuck-on', 'pump-dead', 'device-silent');
      const dry = moving.pumpFraction > 0 && moving.flowLMin < 0.05 * site.pump.ratedFlowLMin;
      const forS = last(seen && stops && dry && before.phase.name === 'circulating', atS);
      return forS > 20 ? `dry for ${forS + 10} s` : undefined;
    };
  },
};

const storeChannels = ['storeBottomC', 'storeMiddleC', 'storeTopC'] as const;
/** What the sensors may be off, and lag behind. */
const sensorErrorK = 1.5;

const coolStore: Truth = {
  name: 'cool-store',
  promise:
    'While the store is 1.5 K above its limit at a place that has a thermometer, no pump is told to bring heat for longer than a minute.',
  exceptions: [
    'While a store thermometer ails, or nothing is sent.',
    'A pan that is kept warm in frost as a last resort.',
  ],
  watch: (site, settings) => {
    const last = lasting();
    const limitC = Math.min(settings.storeLimitC, site.store.maximumC) + sensorErrorK;
    const own = storeChannels.filter((channel) => site.sensors[channel] !== undefined);
    return (moment) => {
      const { plant, faults, atS, decision } = moment;
      const heard = !ails(faults, storeChannels) && !has(faults, 'device-silent', 'power-cut');
      const hot = own.some((channel) => storeC(plant, channel) > limitC);
      const brings = decision.outputs.pumpFraction > 0 && !isKeptWarm(moment, site);
      const forS = last(heard && hot && brings, atS);
      return forS > 60 ? `into a full store for ${forS} s` : undefined;
    };
  },
};

function storeC({ store: { waterC } }: PlantState, channel: (typeof storeChannels)[number]): number {
  const layers = waterC.length;
  const layer = channel === 'storeTopC' ? 0 : channel === 'storeMiddleC' ? layers >> 1 : layers - 1;
  return waterC[layer] as number;
}

const silenceIsSafe: Truth = {
  name: 'silence-is-safe',
  promise: 'When the device says nothing, no pump is told to run; what has a drain is told to open it.',
  exceptions: ['The water of a pan without a drain.'],
  watch: (site) => {
    const last = lasting();
    return ({ faults, atS, decision }) => {
      const { pumpFraction, drainOpen } = decision.outputs;
      const unsafe = pumpFraction > 0 || (site.drain !== 'none' && !drainOpen);
      const forS = last(has(faults, 'device-silent', 'power-cut') && unsafe, atS);
      return forS > 0 ? `blind and not safe for ${forS} s` : undefined;
    };
  },
};

export const truths: readonly Truth[] = [
  noIce,
  coldWaterLeaves,
  shutBeforePumping,
  wetPump,
  coolStore,
  silenceIsSafe,
];
