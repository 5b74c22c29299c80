import type { Channel } from '../../../shared-types/channels.ts';
import type { DrawCourse } from '../../plant/draws.ts';
import { storeLayers } from '../../plant/parts.ts';
import { createPlant, type PlantState } from '../../plant/state.ts';
import { mixByBuoyancy } from '../../plant/store.ts';
import type { Traits } from '../../plant/traits.ts';
import { panChannel } from './pan-channel.ts';
import type { LoggedSpan } from './span.ts';
import { alongStore, storeSeen } from './store-sensors.ts';

/** Store and pan are looked at over so many minutes from when each was first read. */
const lookedMin = 10;
const usualStoreC = 20;
const wetPhases: readonly string[] = ['circulating', 'resting'];

/** The loop as its first readings show it, however late they come. Where nothing shows it, usual values stand. */
export function beginOf(span: LoggedSpan, traits: Partial<Traits>, drawCourse: DrawCourse): PlantState {
  const { site, phases, minutes } = span;
  const first = (channel: Channel) => firstMean(minutes.values[channel]);
  const seen = storeSeen(first);
  const panC = first(panChannel(span) ?? 'ambientC') ?? first('ambientC') ?? usualStoreC;
  const panFull = wetPhases.includes(phases[0]?.phase ?? 'empty');
  const waterC = within(seen.at(-1)?.value ?? usualStoreC);
  const plant = createPlant(site, {
    traits,
    drawCourse,
    waterC,
    panC: panFull ? within(panC) : panC,
    panFull,
  });
  for (let layer = 0; layer < storeLayers; layer++)
    plant.store.waterC[layer] = within(alongStore(seen, layer / (storeLayers - 1)) ?? waterC);
  mixByBuoyancy(plant.store);
  const { reservoir } = plant;
  if (reservoir !== null) reservoir.waterC[0] = within(first('reservoirC') ?? waterC);
  return plant;
}

/** Liquid water, as the plant takes it at its beginning [°C]. */
const within = (valueC: number) => Math.min(95, Math.max(0.5, valueC));

function firstMean(values: Float64Array | undefined): number | undefined {
  const from = values?.findIndex((value) => !Number.isNaN(value)) ?? -1;
  if (values === undefined || from < 0) return undefined;
  const good = values.subarray(from, from + lookedMin).filter((value) => !Number.isNaN(value));
  return good.reduce((sum, value) => sum + value, 0) / good.length;
}
