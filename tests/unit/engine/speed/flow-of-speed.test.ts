import { describe, expect, it } from 'vitest';
import { flowFraction, speedForFlow } from '../../../../controller/engine/speed/flow-of-speed.ts';
import { makeSite } from '../rig.ts';

const siphon = makeSite('drain-valve');
// 1 m to the pan and half of 1.2 m of store, of 4 m without flow.
const lift = 1.6 / 4;
const free = makeSite('pump-stop');

describe('flow by the speed of the pump', () => {
  it('is nothing at rest and all at full speed', () => {
    for (const site of [siphon, free]) expect([flowFraction(site, 0), flowFraction(site, 1)]).toEqual([0, 1]);
  });

  it('goes with the speed where a siphon gives the lift back', () => {
    expect(flowFraction(siphon, 0.5)).toBeCloseTo(0.5, 12);
  });

  it('goes with the root of what the lift leaves', () => {
    expect(flowFraction(free, 0.8)).toBeCloseTo(Math.sqrt((0.64 - lift) / (1 - lift)), 12);
    expect(flowFraction(free, 0.6)).toBe(0);
  });

  it('is turned round by the least speed for a flow, lift or siphon', () => {
    for (const share of [0.3, 0.5, 0.9]) {
      expect(flowFraction(free, speedForFlow(free, share))).toBeCloseTo(share, 12);
      expect(speedForFlow(siphon, share)).toBeCloseTo(Math.sqrt(lift + share * share * (1 - lift)), 12);
    }
  });

  it('knows no lift below nought, nor one that leaves nothing', () => {
    const below = makeSite('pump-stop', ['panOutletC', 'storeBottomC'], {
      pan: { grossAreaM2: 10.2, wettedAreaM2: 10, waterDepthM: 0.04, linerLimitC: 80, heightAboveStoreM: -3 },
    });
    expect(flowFraction(below, 0.5)).toBeCloseTo(0.5, 12);
    const high = makeSite('pump-stop', ['panOutletC', 'storeBottomC'], {
      pan: { grossAreaM2: 10.2, wettedAreaM2: 10, waterDepthM: 0.04, linerLimitC: 80, heightAboveStoreM: 9 },
    });
    expect(speedForFlow(high, 0)).toBeCloseTo(Math.sqrt(0.9), 12);
  });
});
