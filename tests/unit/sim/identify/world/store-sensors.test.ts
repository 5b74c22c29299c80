import { describe, expect, test } from 'vitest';
import type { Channel } from '../../../../../shared-types/channels.ts';
import type { LoggedSpan } from '../../../../../sim/identify/world/span.ts';
import { alongStore, nudge, nudgeOf, storeSeen } from '../../../../../sim/identify/world/store-sensors.ts';
import { createPlant } from '../../../../../sim/plant/state.ts';
import { site } from './span-rig.ts';

type Shown = Readonly<Partial<Record<Channel, number>>>;

/** A store of one temperature after its sensors were looked at once. */
function nudged(waterC: number, shown: Shown): readonly number[] {
  const plant = createPlant(site, { waterC, panC: 20 });
  const values = Object.fromEntries(
    Object.entries(shown).map(([channel, value]) => [channel, Float64Array.of(value)]),
  );
  const byK = nudgeOf(plant, { minutes: { values } } as unknown as LoggedSpan, 0);
  if (byK !== undefined) nudge(plant, byK);
  return plant.store.waterC;
}

describe('between the sensors of a store', () => {
  const seen = storeSeen((channel) => ({ storeTopC: 60, storeBottomC: 20 })[channel as string]);

  test('it is as hot as a straight line has it', () => {
    expect([0, 0.25, 1].map((down) => alongStore(seen, down))).toEqual([60, 50, 20]);
  });

  test('and beyond a single one as at that one; a sensor that shows nothing is none', () => {
    const middle = storeSeen((channel) => (channel === 'storeMiddleC' ? 33 : Number.NaN));
    expect([0, 0.5, 1].map((down) => alongStore(middle, down))).toEqual([33, 33, 33]);
    expect(alongStore([], 0.5)).toBeUndefined();
  });
});

describe('a store that follows its sensors', () => {
  test('takes over a quarter of what they show beyond 0.4 K, and nothing within', () => {
    expect(nudged(30, { storeTopC: 30.4, storeMiddleC: 29.6, storeBottomC: 30.4 })).toEqual(
      Array.from({ length: 12 }, () => 30),
    );
    for (const layerC of nudged(30, { storeTopC: 32.4, storeMiddleC: 32.4, storeBottomC: 32.4 }))
      expect(layerC).toBeCloseTo(30.5, 9);
  });

  test('leaves a colder bottom to the draws', () => {
    expect(nudged(30, { storeBottomC: 20 })).toEqual(Array.from({ length: 12 }, () => 30));
  });

  test('that shows its middle alone follows it as a whole', () => {
    for (const layerC of nudged(30, { storeMiddleC: 34.4 })) expect(layerC).toBeCloseTo(31, 9);
  });

  test('that shows one end alone keeps its other half', () => {
    const byTop = nudged(30, { storeTopC: 34.4 });
    expect(byTop[0]).toBeCloseTo(31, 9);
    expect(byTop.slice(6)).toEqual(Array.from({ length: 6 }, () => 30));
    // Buoyancy brings what the bottom has too much to the top.
    const addedK = (waterC: readonly number[]) => waterC.reduce((sum, layerC) => sum + layerC - 30, 0);
    expect(addedK(nudged(30, { storeBottomC: 34.4 }))).toBeCloseTo(addedK(byTop), 9);
  });
});
