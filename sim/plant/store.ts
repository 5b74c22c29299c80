import { moveAlong } from './row.ts';
import { type Cell, enthalpyJ, waterJKgK } from './water.ts';

/** Layers of a store stand in a row from the top (first) to the bottom (last). */

/** The layer in which incoming water comes to rest: the highest that is not warmer than it. */
export function layerFor(layers: readonly Cell[], waterC: number): number {
  const found = layers.findIndex((layer) => layer.waterC <= waterC);
  return found < 0 ? layers.length - 1 : found;
}

/** Mixes layers that are warmer below than above until none is. Layers hold equal masses. */
export function mixByBuoyancy(layers: Cell[]): void {
  const blocks: { sumC: number; count: number }[] = [];
  for (const layer of layers) {
    let block = { sumC: layer.waterC, count: 1 };
    for (let above = blocks.at(-1); above && above.sumC * block.count < block.sumC * above.count; ) {
      blocks.pop();
      block = { sumC: above.sumC + block.sumC, count: above.count + block.count };
      above = blocks.at(-1);
    }
    blocks.push(block);
  }
  let next = 0;
  for (const { sumC, count } of blocks)
    for (let i = 0; i < count; i++) {
      const layer = layers[next++];
      if (layer !== undefined && count > 1) layer.waterC = sumC / count;
    }
}

export interface DrawOff {
  readonly drawnJ: number;
  readonly madeUpJ: number;
  readonly massKg: number;
}

const makeUpC = 14;
const tapC = 40;

/** Share of the day's hot water that is drawn in an hour, by solar hour. Sums to 1 over a day. */
function drawnShareH(solarHour: number): number {
  if (solarHour >= 7 && solarHour < 8) return 0.3;
  if (solarHour >= 12 && solarHour < 13) return 0.15;
  if (solarHour >= 18.5 && solarHour < 20.5) return 0.275;
  return 0;
}

/**
 * Draws hot water from the top and makes it up with cold at the bottom, as much as was drawn.
 *
 * A mixing valve keeps the tap at 40 °C, so that less is drawn from a hotter store. Hours, amounts and
 * the 14 °C of the make-up are invented.
 */
export function drawOff(layers: Cell[], drawnKgDay: number, solarHour: number, dtS: number): DrawOff {
  const wantedKg = drawnKgDay * drawnShareH(solarHour) * (dtS / 3600);
  const top = layers[0];
  if (wantedKg === 0 || top === undefined) return { drawnJ: 0, madeUpJ: 0, massKg: 0 };
  const massKg = top.waterC > tapC ? (wantedKg * (tapC - makeUpC)) / (top.waterC - makeUpC) : wantedKg;
  moveAlong(layers, [{ cell: layers.length - 1, massKg, waterC: makeUpC }], [{ cell: 0, massKg }]);
  return { drawnJ: enthalpyJ(massKg, top.waterC), madeUpJ: enthalpyJ(massKg, makeUpC), massKg };
}

/**
 * Heat through an exchanger from one mixed body of water into another, implicit in time.
 *
 * @returns The heat that went over [J], negative when the receiver is the warmer.
 */
export function exchangeHeat(from: Cell, into: Cell, exchangerWK: number, dtS: number): number {
  const fromJK = from.massKg * waterJKgK;
  const intoJK = into.massKg * waterJKgK;
  if (fromJK === 0 || intoJK === 0) return 0;
  const acrossJK = exchangerWK * dtS;
  const heatJ = (acrossJK * (from.waterC - into.waterC)) / (1 + acrossJK / fromJK + acrossJK / intoJK);
  from.waterC -= heatJ / fromJK;
  into.waterC += heatJ / intoJK;
  return heatJ;
}
