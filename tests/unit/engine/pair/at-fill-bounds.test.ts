import { describe, expect, it } from 'vitest';
import {
  comparedMs,
  pairAtFill,
  turnoverMs,
  warmingAtFill,
} from '../../../../controller/engine/pair/at-fill.ts';
import { learnPair } from '../../../../controller/engine/pair/learn.ts';
import type { Situation } from '../../../../controller/engine/situation.ts';
import { type EngineState, initialState } from '../../../../controller/engine/state.ts';
import { clearSkyWM2 } from '../../../../controller/engine/sun/position.ts';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import type { Channel } from '../../../../shared-types/channels.ts';
import { makeSite } from '../rig.ts';
import { nowMs, situationOf } from '../situations.ts';

const site = makeSite('drain-valve');
const ends = { panInletC: 20, storeBottomC: 20, ambientC: 15 };
type Told = Partial<Record<Channel, number>>;
/** What a sheet loses at 20 °C to air of 15 °C and to the sky [W/m2]. */
const lostWM2 = 60 + 18.5 * 5;
const sunHeightDeg = 5;

/** A fill that has passed the pan once, in a dim sun that did not change: it takes in what is given. */
function afterFill(takenWM2: number, told: Told, learnt: EngineState['learnt'] = {}): Situation {
  const { meter, harvest } = initialState();
  return situationOf({
    told: { ...ends, ...told },
    sunHeightDeg,
    state: {
      phase: { name: 'circulating', sinceMs: nowMs - 1_440_000, afterFill: true },
      harvest: {
        ...harvest,
        dryTakenWM2: takenWM2,
        dryClearWM2: clearSkyWM2(sunHeightDeg),
        drySteady: true,
        risingWM2: 50,
      },
      meter: { ...meter, total: { ...meter.total, fills: 1 } },
      learnt,
    },
  });
}
const without = (situation: Situation, ...channels: Channel[]): Situation => ({
  ...situation,
  readings: Object.fromEntries(
    Object.entries(situation.readings).filter(([channel]) => !channels.includes(channel as Channel)),
  ),
});
const warmed = (takenWM2: number, coldC = 20) =>
  (10.2 * (takenWM2 - 60 - 18.5 * (coldC - 15))) / streamHeatW(20, coldC + 1, coldC, coldC);

describe('the time of a comparison', () => {
  it('is 1.2 times what the pump takes for 400 L at 20 L/min', () => {
    expect([turnoverMs(site), comparedMs(site)]).toEqual([1_200_000, 1_440_000]);
  });
});

describe('the warming of a fresh fill', () => {
  it('is that of the water at the inlet, else at the source', () => {
    const apart = afterFill(200, { panInletC: 19, storeBottomC: 18 });
    expect(warmingAtFill(apart)?.warmedK).toBeCloseTo(warmed(200, 19), 12);
    expect(warmingAtFill(without(apart, 'panInletC'))?.warmedK).toBeCloseTo(warmed(200, 18), 12);
    const cold = afterFill(60, { panInletC: 0, storeBottomC: 0, ambientC: 0 });
    expect(warmingAtFill(cold)?.warmedK).toBe(0);
    expect(warmingAtFill(without(cold, 'panInletC', 'storeBottomC'))).toBeNull();
  });

  it('is not told of a flow of nought, nor of one that is reversed', () => {
    expect(warmingAtFill(afterFill(lostWM2, { flowLMin: 0.001 }))).toEqual({ warmedK: 0, sdK: 0.1 });
    expect(warmingAtFill(afterFill(lostWM2, { flowLMin: 0 }))).toBeNull();
    expect(warmingAtFill(afterFill(lostWM2, { flowLMin: -5 }))).toBeNull();
  });

  it('goes with the sun from 100 W/m2 of a clear sky on', () => {
    const situation = afterFill(200, {});
    const { state } = situation;
    const harvest = { ...state.harvest, dryClearWM2: 100 };
    const bright = { ...situation, sunHeightDeg: 8.5, state: { ...state, harvest } };
    expect(warmingAtFill(bright)?.warmedK).toBeCloseTo(warmed(2 * clearSkyWM2(8.5)), 12);
  });
});

describe('the pair after a fill', () => {
  const warming = { warmedK: 0.4, sdK: 0.2 };

  it('needs outlet and store', () => {
    expect(pairAtFill(afterFill(200, {}), warming)).toBeNull();
    expect(pairAtFill(without(afterFill(200, { panOutletC: 21 }), 'storeBottomC'), warming)).toBeNull();
  });

  it('teaches nothing by an outlet that is missing', () => {
    const learnt = { fullFlowLMin: 20 };
    expect(learnPair(afterFill(lostWM2, {}, learnt))).toBe(learnt);
  });

  it('is believed up to twice the deviation of both, on either side of what is known', () => {
    // It shows 0.5 K, and 0.1 K is its own deviation.
    const seen = (outletOffsetK: number) => {
      const learnt = { outletOffsetK, outletOffsetSdK: 0.2, endsOffsetK: 0 };
      return learnPair(afterFill(lostWM2, { panOutletC: 20.5 }, learnt)) !== learnt;
    };
    const mostK = 2 * Math.hypot(0.2, 0.1);
    expect(0.5 - (0.5 - mostK)).toBe(mostK);
    expect([seen(0.5 - mostK), seen(0.5 - mostK - 1e-9)]).toEqual([true, false]);
    expect([seen(0.5 + mostK - 1e-9), seen(0.5 + mostK + 1e-9)]).toEqual([true, false]);
  });
});

describe('the ends after a fill', () => {
  const taught = (situation: Situation) => learnPair(situation)['endsOffsetK'];

  it('differ by less than 2 K, or one of them has another trouble', () => {
    expect(taught(afterFill(lostWM2, { panOutletC: 21.9 }))).toBeCloseTo(1.9, 12);
    expect(taught(afterFill(lostWM2, { panOutletC: 22 }))).toBeUndefined();
    expect(taught(afterFill(lostWM2, { panOutletC: 18 }))).toBeUndefined();
    expect(taught(afterFill(lostWM2, { panOutletC: 22.5 }))).toBeUndefined();
  });

  it('are left alone where the warming is known to worse than 0.3 K', () => {
    const dim = 0.8 * (streamHeatW(20, 21, 20, 20) / 10.2);
    expect(taught(afterFill(lostWM2 + dim - 0.1, { panOutletC: 21 }))).toBeCloseTo(0.2, 2);
    expect(taught(afterFill(lostWM2 + dim + 0.1, { panOutletC: 21 }))).toBeUndefined();
  });

  it('are both needed', () => {
    const cold = afterFill(60, { panOutletC: 1.5, panInletC: 1, storeBottomC: 1, ambientC: 1 });
    expect(taught(cold)).toBe(0.5);
    expect(taught(without(cold, 'panInletC'))).toBeUndefined();
    expect(taught(without(cold, 'panOutletC'))).toBeUndefined();
  });
});
