import { type PlantState, panLiquidKg } from '../../plant/state.ts';
import { at, sum, waterJKgK } from '../../plant/water.ts';
import { outsideJ } from '../harvest.ts';
import type { Mode } from './modes.ts';

/** What was done from decision to decision, the newest first. */
export interface Trail {
  readonly mode: Mode;
  readonly before: Trail | null;
}

/** One way to have come to an instant, and where the water and its heat then are. */
export interface Label {
  readonly plant: PlantState;
  /** Heat that came home on this way. */
  readonly homeJ: number;
  /** The same with what is outside at this instant: what would count if the run ended here. */
  readonly countedJ: number;
  /** What was granted to it when others were merged into it. */
  grantedJ: number;
  /** Only labels with the water in the same places are compared. */
  readonly group: number;
  /**
   * Heat above a fixed temperature in the place from which heat is lost soonest (pan and pipes), in that and the next
   * (reservoir, then the store's layers from the bottom up), and so on to all of it.
   */
  readonly heatJ: readonly number[];
  readonly trail: Trail | null;
}

export type Way = Pick<Label, 'plant' | 'homeJ' | 'grantedJ' | 'trail'>;

/** @param originC - Temperature that heats are counted from. @param outsideAtFirstJ - Outside when the run began. */
export function labelOf(way: Way, originC: number, outsideAtFirstJ: number): Label {
  const { plant } = way;
  return {
    ...way,
    countedJ: way.homeJ + outsideJ(plant) - outsideAtFirstJ,
    group: groupOf(plant),
    heatJ: heatFromOutside(plant, originC),
  };
}

const emptyFraction = 0.001;
const fullFraction = 0.97;
const partGroups = 20;

/** Empty, full with a free or a pulling return pipe, or one of twenty levels between. */
function groupOf(plant: PlantState): number {
  const filled = panLiquidKg(plant) / plant.parts.pan.fullKg;
  if (filled < emptyFraction) return 0;
  if (filled < fullFraction) return 1 + Math.round(filled * partGroups);
  return 100 + (plant.returnAirFraction > 0.5 ? 0 : 1);
}

function heatFromOutside(plant: PlantState, originC: number): number[] {
  const { supply, return: home, reservoir, store } = plant;
  const reservoirKg = reservoir === null ? 0 : at(reservoir.massKg, 0);
  const reservoirJ = reservoir === null ? 0 : waterJKgK * reservoirKg * at(reservoir.waterC, 0);
  const panKg = panLiquidKg(plant) + sum(supply.massKg) + sum(home.massKg);
  let heatJ = outsideJ(plant) - reservoirJ - waterJKgK * panKg * originC;
  const heats = [heatJ];
  heatJ += reservoirJ - waterJKgK * reservoirKg * originC;
  heats.push(heatJ);
  for (let layer = store.massKg.length - 1; layer >= 0; layer--) {
    heatJ += waterJKgK * at(store.massKg, layer) * (at(store.waterC, layer) - originC);
    heats.push(heatJ);
  }
  return heats;
}

/**
 * Heat that lies worse in one label than in another [J], 0 and more: so much would have to be taken from `worse` for
 * its heat to lie nowhere further out than that of `better`.
 */
export function misplacedJ(worse: Label, better: Label): number {
  let mostJ = 0;
  for (let place = 0; place < worse.heatJ.length; place++)
    mostJ = Math.max(mostJ, at(worse.heatJ, place) - at(better.heatJ, place));
  return mostJ;
}
