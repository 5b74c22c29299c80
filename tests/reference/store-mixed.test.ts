import { describe, expect, it } from 'vitest';
import { createPlant, type PlantState } from '../../sim/plant/state.ts';
import { conductAndLose } from '../../sim/plant/store.ts';
import { waterJKgK, waterKgL } from '../../sim/plant/water.ts';
import { demoContent, siteOf } from '../support/sites.ts';

/**
 * Kalogirou, Solar Energy Engineering (2009), chapter 5, table 5.3, published: a fully mixed store of
 * 500 kg, 12 W/K, room of 20 °C, from 45 °C; heat brought and drawn in each hour [MJ], temperature after it.
 */
const kalogirouTable53 = [
  [0, 12, 38.7],
  [0, 12, 32.6],
  [0, 12, 26.6],
  [10, 15, 24.1],
  [21, 15, 26.9],
] as const;

const massKg = 500;
const bookJKgK = 4180;
const roomC = 20;
const hourS = 3600;

function storeAt45(lossWK: number): PlantState {
  const store = { volumeL: massKg / waterKgL, headroomL: 600, heightM: 1.2, lossWK };
  return createPlant(siteOf(demoContent({ store })), { waterC: 45, panC: 20 });
}

/** Largest difference to the table, when each hour is `pieces` steps of loss and its share of the heat. */
function largestK(plant: PlantState, pieces: number): number {
  const { waterC } = plant.store;
  let mostK = 0;
  for (const [broughtMJ, drawnMJ, printedC] of kalogirouTable53) {
    const riseK = ((broughtMJ - drawnMJ) * 1e6) / (massKg * bookJKgK) / pieces;
    for (let piece = 0; piece < pieces; piece++) {
      conductAndLose(plant, roomC, hourS / pieces);
      for (let layer = 0; layer < waterC.length; layer++) waterC[layer] = (waterC[layer] ?? 0) + riseK;
    }
    for (const layerC of waterC) mostK = Math.max(mostK, Math.abs(layerC - printedC));
  }
  return mostK;
}

describe('a fully mixed store', () => {
  it('follows the hours of the table to its last digit', () => {
    // The book loses an hour's heat at the temperature of its beginning, the plant at that of its end, and
    // their heat capacities differ by 0.1 %. This conductance loses by the end what 12 W/K lose by the beginning.
    const bookFraction = (12 * hourS) / (massKg * bookJKgK);
    const lossWK = ((bookFraction / (1 - bookFraction)) * massKg * waterJKgK) / hourS;
    expect(largestK(storeAt45(lossWK), 1)).toBeLessThan(0.05);
  });

  it('differs by less than 0.3 K from the table where loss and heat act all through the hour', () => {
    // The book's hourly step takes too much: each hour it loses as if the store were as warm as at first.
    expect(largestK(storeAt45(12), 360)).toBeLessThan(0.3);
  });
});
