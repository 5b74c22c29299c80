import { describe, expect, it } from 'vitest';
import {
  emptiedHeatJ,
  filledAfter,
  overfilledHeatJ,
  panWaterC,
} from '../../../../controller/engine/meter/emptied.ts';
import { panHeatJK } from '../../../../controller/engine/pan.ts';
import { initialState, type Phase } from '../../../../controller/engine/state.ts';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import type { Channel } from '../../../../shared-types/channels.ts';
import { makeSite } from '../rig.ts';
import { situationOf } from '../situations.ts';

const site = makeSite('drain-valve');
const filling: Phase = { name: 'filling', sinceMs: 0 };
const resting: Phase = { name: 'resting', sinceMs: 0 };
type Told = Partial<Record<Channel, number>>;

describe('heat of an emptied pan', () => {
  const heatJ = (emptyingPanC: number | null, fillStoreC: number | null) =>
    emptiedHeatJ(situationOf({ state: { water: { ...initialState().water, emptyingPanC, fillStoreC } } }));

  it('is that of its volume between the two temperatures', () => {
    expect(heatJ(30, 20)).toBe(panHeatJK(site, 25) * 10);
  });

  it('is nothing where either is not known', () => {
    expect([heatJ(null, 20), heatJ(30, null), heatJ(null, null)]).toEqual([0, 0, 0]);
  });
});

describe('heat of what was filled beyond the pan', () => {
  const heatJ = (filledL: number, told: Told) => {
    const meter = { ...initialState().meter, filledL };
    return overfilledHeatJ(situationOf({ state: { phase: filling, meter }, told }));
  };

  it('begins with what the pan does not hold', () => {
    const told = { panOutletC: 30, panInletC: 20 };
    expect(heatJ(401, told)).toBeCloseTo(streamHeatW(1, 30, 20, 20) * 60, 9);
    expect(heatJ(399, told)).toBe(0);
    expect(heatJ(400, { panOutletC: 10, panInletC: 20 })).toBe(0);
  });

  it('is not told without both ends', () => {
    expect([heatJ(401, { panOutletC: 30 }), heatJ(401, { panInletC: 20 })]).toEqual([0, 0]);
  });
});

describe('the water that a fill has moved', () => {
  const moved = (flowLMin: number, phase: Phase) =>
    filledAfter(100, situationOf({ state: { phase }, told: { flowLMin }, elapsedMs: 30_000 }));

  it('grows with the flow while the pan fills, and never falls', () => {
    expect([moved(20, filling), moved(-20, filling), moved(20, resting)]).toEqual([110, 100, 100]);
  });
});

describe('the temperature of the pan', () => {
  const waterC = (phase: Phase, told: Told) => panWaterC(situationOf({ state: { phase }, told }));
  const all = { panOutletC: 30, panSheetC: 26, panInletC: 20 };

  it('is between both ends while the pump runs', () => {
    expect(waterC(filling, all)).toBe(25);
    expect(waterC(resting, all)).toBe(28);
  });

  it('is that of outlet and sheet where an end is missing, or of one of them', () => {
    expect(waterC(filling, { panOutletC: 30, panSheetC: 26 })).toBe(28);
    expect(waterC(filling, { panSheetC: 26, panInletC: 20 })).toBe(26);
    expect(waterC(resting, { panSheetC: 26 })).toBe(26);
    expect(waterC(resting, { panOutletC: 30 })).toBe(30);
    expect(waterC(resting, { panInletC: 20 })).toBeNull();
  });
});
