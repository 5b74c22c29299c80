import { describe, expect, it } from 'vitest';
import { flowFactor, heatRemovalFactor } from '../../../../controller/engine/pair/heat-removal.ts';
import { learnPair, measurePair, notePair } from '../../../../controller/engine/pair/learn.ts';
import { leastStartDifferenceK, stabilityOf } from '../../../../controller/engine/pair/stability.ts';
import { pairOffset } from '../../../../controller/engine/pair/uncertainty.ts';
import { initialState, safeOutputs } from '../../../../controller/engine/state.ts';
import { waterDensityKgM3, waterHeatJKgK } from '../../../../controller/engine/water.ts';
import type { Channel } from '../../../../shared-types/channels.ts';
import { makeSite, quickSettings } from '../rig.ts';
import { situationOf } from '../situations.ts';

const hourMs = 3_600_000;

describe('what is known of the pair', () => {
  it('is nothing without offset and deviation, and never less than nothing', () => {
    const nothing = { offsetK: 0, sdK: 1 };
    expect(pairOffset({})).toEqual(nothing);
    expect(pairOffset({ outletOffsetK: 0.5 })).toEqual(nothing);
    expect(pairOffset({ outletOffsetSdK: 0.5 })).toEqual(nothing);
    expect(pairOffset({ outletOffsetK: 0.5, outletOffsetSdK: 0.2 })).toEqual({ offsetK: 0.5, sdK: 0.2 });
    expect(pairOffset({ outletOffsetK: 0.5, outletOffsetSdK: 1.2 })).toEqual({ offsetK: 0.5, sdK: 1 });
  });

  it('is a mean up to three deviations, counted from what was known', () => {
    const known = { outletOffsetK: 0, outletOffsetSdK: 0.3 };
    expect(notePair(known, 1.5, 0.4)['outletOffsetK']).toBeCloseTo(1.5 * 0.36, 12);
    const other = { outletOffsetK: 1, outletOffsetSdK: 0.3 };
    expect(notePair(other, 1.2, 0.4)['outletOffsetK']).toBeCloseTo(1 + 0.2 * 0.36, 12);
  });
});

/** Water of 26 °C that circulates in the dark for an hour, under air that is so much warmer. */
function night(told: Partial<Record<Channel, number>>, sinceMs = 0, darkMs: number | null = 0) {
  const phase = { name: 'circulating', sinceMs, afterFill: false } as const;
  const watch = { ...initialState().watch, darkMs };
  const outputs = { ...safeOutputs, pumpFraction: 1 };
  return situationOf({ told, state: { phase, watch, outputs }, runMs: sinceMs + hourMs });
}

describe('a pair in the dark', () => {
  const streamWK = (20 / 60_000) * waterDensityKgM3(26) * waterHeatJKgK(26);

  it('has the middle of gain and loss taken off', () => {
    // Up to 100 W/m2 to the sky, up to 50 W/m2 from the air, over 10 m2.
    const measured = measurePair(night({ panOutletC: 27, storeBottomC: 26, ambientC: 28 }));
    expect(measured?.offsetK).toBeCloseTo(1 + 250 / streamWK, 9);
    expect(measured?.sdK).toBeCloseTo(1500 / 4 / streamWK, 9);
  });

  it('needs outlet and store, and the dark', () => {
    expect(measurePair(night({ panOutletC: 27, ambientC: 28 }))).toBeNull();
    expect(measurePair(night({ storeBottomC: 26, ambientC: 28 }))).toBeNull();
    expect(measurePair(night({ panOutletC: 27, storeBottomC: 26, ambientC: 28 }, 0, null))).toBeNull();
  });

  it('of 2 K is not learnt', () => {
    // Air that gives what the sky takes.
    const learnt = (outletC: number) =>
      learnPair(night({ panOutletC: outletC, storeBottomC: 26, ambientC: 30 }))['outletOffsetK'];
    expect([learnt(28), learnt(24)]).toEqual([undefined, undefined]);
    expect([learnt(27.99), learnt(24.01)]).not.toContain(undefined);
  });

  it('is noted by the time since circulation began', () => {
    const told = { panOutletC: 27, storeBottomC: 26, ambientC: 28 };
    expect(learnPair(night(told, 10_000))).not.toEqual({});
    const phase = { name: 'resting', sinceMs: 10_000 } as const;
    const still = night(told, 10_000);
    expect(learnPair({ ...still, state: { ...still.state, phase } })).toEqual({});
  });
});

describe('the heat that a stream takes', () => {
  it('is none without a stream, and all of it where nothing is lost', () => {
    const flow = { areaM2: 10, lossWM2K: 18.5, efficiencyFactor: 0.93, capacityRateWK: 1387 };
    expect(flowFactor({ ...flow, capacityRateWK: 0 })).toBe(0);
    expect(flowFactor({ ...flow, areaM2: 0, capacityRateWK: 0 })).toBe(0);
    expect(flowFactor({ ...flow, areaM2: 0 })).toBe(1);
  });

  it('names a least start difference that is a whole tenth as it is', () => {
    const site = makeSite('drain-valve');
    const flow = {
      ...{ areaM2: 10, lossWM2K: 18.5, efficiencyFactor: 0.93 },
      capacityRateWK: (20 / 60_000) * waterDensityKgM3(30) * waterHeatJKgK(30),
    };
    const perK = leastStartDifferenceK({ ...flow, heatRemovalFactor: heatRemovalFactor(flow) }, 1);
    const at = (leastK: number) =>
      stabilityOf(site, { ...quickSettings, stopDifferenceK: leastK / perK }, {}).leastStartDifferenceK;
    expect([at(8), at(8.001), at(8.1)]).toEqual([8, 8.1, 8.1]);
  });
});
