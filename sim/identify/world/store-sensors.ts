import type { Channel } from '../../../shared-types/channels.ts';
import { storeLayers } from '../../plant/parts.ts';
import type { PlantState } from '../../plant/state.ts';
import { mixByBuoyancy } from '../../plant/store.ts';
import type { LoggedSpan } from './span.ts';

/** Where the sensors of a store sit, as a share of the way down, from the top. */
const places: readonly (readonly [Channel, number])[] = [
  ['storeTopC', 0],
  ['storeMiddleC', 0.5],
  ['storeBottomC', 1],
];

export interface StoreSeen {
  readonly down: number;
  readonly value: number;
}

/** What the store's sensors say, from the top to the bottom. */
export function storeSeen(read: (channel: Channel) => number | undefined): StoreSeen[] {
  return places.flatMap(([channel, down]) => {
    const value = read(channel);
    return value === undefined || Number.isNaN(value) ? [] : [{ down, value }];
  });
}

/** Between the sensors by straight lines, beyond them as at the nearest; undefined without any. */
export function alongStore(seen: readonly StoreSeen[], down: number): number | undefined {
  const above = seen.findLast((sensor) => sensor.down <= down);
  const below = seen.find((sensor) => sensor.down >= down);
  if (above === undefined || below === undefined) return (above ?? below)?.value;
  if (above === below) return above.value;
  return above.value + ((down - above.down) / (below.down - above.down)) * (below.value - above.value);
}

/** So much of what a store sensor shows otherwise is taken over in each window; a design choice. */
const takenFraction = 0.25;
/** A sensor may be off by this for ever [K]. */
const deadK = 0.4;
const layerDown = (layer: number) => layer / (storeLayers - 1);

/** By how much the layers of a store are warmer than all that is known of it explains, from the top to the bottom [K]. */
export type Nudge = readonly number[];

/**
 * What brings the store of a plant that follows a log towards what its sensors showed at a minute; undefined where they
 * agree. A bottom that was seen colder is left to the draws, which are what makes it so.
 */
export function nudgeOf({ store }: PlantState, { minutes }: LoggedSpan, minute: number): Nudge | undefined {
  const { waterC } = store;
  const apart = storeSeen((channel) => minutes.values[channel]?.[minute]).map(({ down, value }) => {
    const ownC = waterC[Math.round(down * (storeLayers - 1))] as number;
    const beyondK = Math.sign(value - ownC) * Math.max(0, Math.abs(value - ownC) - deadK);
    return { down, value: down === 1 ? Math.max(0, beyondK) : beyondK };
  });
  if (apart.every(({ value }) => value === 0)) return undefined;
  const seen = apart.length === 1 ? besideTheMiddle(apart) : apart;
  return waterC.map((_, layer) => takenFraction * (alongStore(seen, layerDown(layer)) ?? 0));
}

/** Brings the layers of a store by so much, and puts them in order. */
export function nudge({ store }: PlantState, byK: Nudge): void {
  for (const [layer, layerC] of store.waterC.entries()) store.waterC[layer] = layerC + (byK[layer] as number);
  mixByBuoyancy(store);
}

/** What one end alone shows holds for the layers next to it: the middle counts as right. */
function besideTheMiddle(apart: readonly StoreSeen[]): StoreSeen[] {
  const middle = apart.some(({ down }) => down === 0.5) ? [] : [{ down: 0.5, value: 0 }];
  return [...apart, ...middle].toSorted((a, b) => a.down - b.down);
}
