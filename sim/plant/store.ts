import { storeLayers } from './parts.ts';
import { createExchange, letIn, moveAlong, takeFromEnd } from './row.ts';
import type { PlantState } from './state.ts';
import { at, cellJK, type Row, sum, waterJKgK } from './water.ts';

/** Layers of a store stand in a row from the top (first) to the bottom (last). */
const alongStore = createExchange(storeLayers);
const lastLayer = storeLayers - 1;

/**
 * The layer in which incoming water comes to rest, after it sank or rose from the top to its like.
 *
 * On its way down it takes some of each warmer layer along (`inletMixingFraction` of its own mass), which
 * spoils the layers as a real inlet does.
 */
function sinkFromTop(store: Row, massKg: number, waterC: number, mixingFraction: number): void {
  let plumeKg = massKg;
  let plumeKgC = massKg * waterC;
  let layer = 0;
  while (layer < lastLayer && at(store.waterC, layer) * plumeKg > plumeKgC) {
    const alongKg = Math.min(mixingFraction * massKg, 0.2 * at(store.massKg, layer));
    store.massKg[layer] = at(store.massKg, layer) - alongKg;
    plumeKg += alongKg;
    plumeKgC += alongKg * at(store.waterC, layer);
    layer++;
  }
  letIn(alongStore, layer, plumeKg, plumeKgC / plumeKg);
}

/** Lets water of an exchanger into the store at its own temperature, through a perforated riser: the layers stay. */
export function letIntoStore(store: Row, massKg: number, waterC: number): void {
  let layer = 0;
  while (layer < lastLayer && at(store.waterC, layer) > waterC) layer++;
  letIn(alongStore, layer, massKg, waterC);
}

/** Lets water into the store from above, or into the reservoir. */
export function bringHome({ store, reservoir, parts }: PlantState, massKg: number, waterC: number): void {
  if (reservoir === null) {
    sinkFromTop(store, massKg, waterC, parts.traits.inletMixingFraction);
    return;
  }
  const heldKg = at(reservoir.massKg, 0);
  reservoir.waterC[0] = (heldKg * at(reservoir.waterC, 0) + massKg * waterC) / (heldKg + massKg);
  reservoir.massKg[0] = heldKg + massKg;
}

export interface DrawOff {
  readonly massKg: number;
  readonly drawnJ: number;
  readonly madeUpJ: number;
}
const nothingDrawn: DrawOff = { massKg: 0, drawnJ: 0, madeUpJ: 0 };

/**
 * Draws hot water from the top and makes it up with cold at the bottom, as much as was drawn.
 *
 * A mixing valve keeps the tap at its temperature, so that less is drawn from a hotter store.
 *
 * @param wantedKg - Water wanted at the tap in this step.
 */
export function drawOff({ store, parts }: PlantState, wantedKg: number): DrawOff {
  if (wantedKg === 0) return nothingDrawn;
  const { tapC, makeUpC } = parts.traits;
  const topC = at(store.waterC, 0);
  // Cold water that is no colder than the tap wants needs no hot water at all.
  const hotFraction = topC <= tapC ? 1 : tapC <= makeUpC ? 0 : (tapC - makeUpC) / (topC - makeUpC);
  const massKg = Math.min(hotFraction * wantedKg, sum(store.massKg));
  const drawnKgC = takeFromEnd(store, massKg, false);
  letIn(alongStore, lastLayer, massKg, makeUpC);
  return { massKg, drawnJ: drawnKgC * waterJKgK, madeUpJ: massKg * makeUpC * waterJKgK };
}

/** Evens the layers after all that was taken and let in; most of the time there was nothing. */
export function evenLayers(store: Row): void {
  const untouched = alongStore.pendingKg === 0 && at(store.massKg, 0) === at(store.massKg, lastLayer);
  if (!untouched) moveAlong(store, alongStore);
}

/** What stands above the brim runs over, from the top. @returns its mass and mass times temperature. */
export function spill({ store, parts }: PlantState): { readonly massKg: number; readonly massKgC: number } {
  const massKg = sum(store.massKg) - parts.store.brimKg;
  return massKg > 0 ? { massKg, massKgC: takeFromEnd(store, massKg, false) } : { massKg: 0, massKgC: 0 };
}

/** Conducts heat down the store, and lets each layer lose its share to the air. @returns heat lost [J]. */
export function conductAndLose({ store, parts }: PlantState, airC: number, dtS: number): number {
  const { waterC, massKg } = store;
  const layerM = (parts.store.heightM * at(massKg, 0)) / parts.store.brimKg;
  const layerJK = cellJK(store, 0);
  if (layerJK === 0) return 0;
  // Thin layers of a nearly empty store conduct so well that a step would overshoot; they even out anyway.
  const acrossJK = Math.min(
    ((parts.traits.storeConductionWMK * parts.store.areaM2) / layerM) * dtS,
    0.25 * layerJK,
  );
  const shareJK = (parts.store.lossWK / storeLayers) * dtS;
  const downFraction = acrossJK / layerJK;
  const keptFraction = layerJK / (layerJK + shareJK);
  let fromAboveK = 0;
  let lostJ = 0;
  for (let i = 0; i < storeLayers; i++) {
    const hereC = at(waterC, i);
    const toBelowK = i < lastLayer ? downFraction * (hereC - at(waterC, i + 1)) : 0;
    const conductedC = hereC + fromAboveK - toBelowK;
    fromAboveK = toBelowK;
    const newC = airC + keptFraction * (conductedC - airC);
    waterC[i] = newC;
    lostJ += shareJK * (newC - airC);
  }
  return lostJ;
}

/** Mixes layers that are warmer below than above until none is. Layers hold equal masses. */
export function mixByBuoyancy({ waterC }: Row): void {
  for (let i = 1; i < waterC.length; i++) {
    if (at(waterC, i) <= at(waterC, i - 1)) continue;
    // A block of layers grows upwards as long as it is warmer than what stands on it.
    let first = i;
    let sumC = at(waterC, i);
    let meanC = sumC;
    while (first > 0 && at(waterC, first - 1) < meanC) {
      first--;
      sumC += at(waterC, first);
      meanC = sumC / (i - first + 1);
    }
    for (let layer = first; layer <= i; layer++) waterC[layer] = meanC;
  }
}
