import { describe, expect, it } from 'vitest';
import { beliefOf } from '../../../controller/engine/belief.ts';
import { panHeatJK } from '../../../controller/engine/pan.ts';
import type { Facts } from '../../../controller/engine/sense/facts.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import { initialState, safeOutputs, type WaterLevel } from '../../../controller/engine/state.ts';
import { noHarvest } from '../../../controller/engine/want/outlook.ts';
import { makeSite } from './rig.ts';
import { situationOf } from './situations.ts';

const site = makeSite('drain-valve');
const told = { panOutletC: 25, panSheetC: 25, storeBottomC: 20 };

function seen(level: WaterLevel, facts: Partial<Facts> = {}) {
  const harvest = { ...noHarvest, gainW: 300, dayJ: 7e6 };
  const situation = situationOf({ state: { harvest }, level, told });
  return beliefOf({ ...situation, facts: { ...situation.facts, ...facts } });
}

describe('heat at stake and net gain', () => {
  it('are those of a full pan', () => {
    expect(seen('full')).toMatchObject({ water: 'full', netGainW: 300, differenceK: 5, dayPromiseJ: 7e6 });
    expect(seen('full').heatAtStakeJ).toBe(panHeatJK(site, 25) * 5);
  });

  it.each(['empty', 'part', 'unknown'] as const)('are not told of a pan that is %s', (level) => {
    expect(seen(level)).toMatchObject({ water: level, netGainW: null, heatAtStakeJ: null, dayPromiseJ: 7e6 });
  });

  it('need the pan and its difference', () => {
    expect(seen('full', { panC: null }).heatAtStakeJ).toBeNull();
    expect(seen('full', { differenceK: null }).heatAtStakeJ).toBeNull();
  });

  it('are never less than nought where they are nought', () => {
    expect(seen('full', { differenceK: -0 }).heatAtStakeJ).toBe(0);
  });
});

describe('a proven flow', () => {
  const flow = (flowLMin: number | null, name: 'filling' | 'resting' = 'filling', pumpFraction = 0.5) => {
    const state = { phase: { name, sinceMs: 0 }, outputs: { ...safeOutputs, pumpFraction } };
    return beliefOf(situationOf({ state, told: flowLMin === null ? {} : { flowLMin } })).flowProven;
  };

  it('is a tenth of what is rated at the speed of the pump', () => {
    expect([flow(1), flow(0.999)]).toEqual([true, false]);
  });

  it('is measured, under a pump that runs', () => {
    expect([flow(null), flow(null, 'filling', 0), flow(20, 'resting')]).toEqual([false, false, false]);
  });
});

describe('the time to freezing', () => {
  const left = (panC: number, trendC: number | null, facts: Partial<Facts> = {}) => {
    const water = { ...initialState().water, trendC };
    const situation: Situation = situationOf({ state: { water }, told: { panOutletC: panC, panSheetC: 20 } });
    return beliefOf({ ...situation, facts: { ...situation.facts, ...facts } }).timeToFreezingS;
  };

  it('is what the coldest pan reading takes at the rate of the pan', () => {
    // 0.3 K below a mean of five minutes: 1 mK/s.
    expect(left(3, 3.3)).toBeCloseTo(3000, 6);
    expect(left(30, 30.3)).toBeCloseTo(20_000, 6);
  });

  it('is nought below freezing', () => {
    expect(left(-1, 0)).toBe(0);
  });

  it('is not told of a pan that does not cool, nor of one that cannot be read', () => {
    expect([left(3, 3), left(3, 2), left(3, null)]).toEqual([null, null, null]);
    expect(left(3, 3.3, { coldestPanC: null })).toBeNull();
  });
});
