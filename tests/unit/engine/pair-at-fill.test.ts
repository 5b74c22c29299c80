import { describe, expect, it } from 'vitest';
import { comparedMs, pairAtFill, warmingAtFill } from '../../../controller/engine/pair/at-fill.ts';
import { learnPair } from '../../../controller/engine/pair/learn.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import { type EngineState, initialState } from '../../../controller/engine/state.ts';
import { clearSkyWM2 } from '../../../controller/engine/sun/position.ts';
import { streamHeatW } from '../../../controller/engine/water.ts';
import { commonSensors, makeSite } from './rig.ts';
import { nowMs, situationOf } from './situations.ts';

const site = makeSite('drain-valve');
const told = { panOutletC: 21, panInletC: 20, storeBottomC: 20, ambientC: 15 };
const harvest = {
  ...initialState().harvest,
  dryTakenWM2: 300,
  dryClearWM2: 400,
  drySteady: true,
  risingWM2: 50,
};
const totals = initialState().meter.total;

/** The step at which water has passed the pan once and a little after the first fill of a morning. */
function afterFill(
  changes: Partial<EngineState['harvest']> = {},
  rest: Parameters<typeof situationOf>[0] = {},
  fills = 1,
): Situation {
  const state = {
    phase: { name: 'circulating', sinceMs: nowMs - comparedMs(site), afterFill: true },
    harvest: { ...harvest, ...changes },
    meter: { ...initialState().meter, total: { ...totals, fills } },
  } as const;
  return situationOf({ told, sunHeightDeg: 30, ...rest, state: { ...state, ...rest?.state } });
}

/** Heat of 10.2 m2 at 18.5 W/m2K and 60 W/m2 to the sky, over 20 L/min. */
const warmed = (takenWM2: number) => (10.2 * (takenWM2 - 60 - 18.5 * 5)) / streamHeatW(20, 21, 20, 20);

describe('what a fresh fill is warmed by', () => {
  it('goes with the sun since the sheet was dry', () => {
    const found = warmingAtFill(afterFill());
    const expectedK = warmed((300 * clearSkyWM2(30)) / 400);
    expect(found?.warmedK).toBeCloseTo(expectedK, 9);
    expect(found?.sdK).toBeCloseTo(0.1 + 0.25 * expectedK, 9);
  });

  it('has the sun on top of it where it was dim before', () => {
    const found = warmingAtFill(afterFill({ dryClearWM2: 99.9, dryTakenWM2: 160 }, { sunHeightDeg: 10 }));
    expect(found?.warmedK).toBeCloseTo(warmed(160 + 0.9 * 0.7 * (clearSkyWM2(10) - 99.9)), 9);
  });

  it('is taken over the flow that is measured, else over the learnt one', () => {
    const usual = warmingAtFill(afterFill())?.warmedK ?? 0;
    const half = { told: { ...told, flowLMin: 40 } };
    expect(warmingAtFill(afterFill({}, half))?.warmedK).toBeCloseTo(usual / 2, 9);
    const learnt = { state: { learnt: { fullFlowLMin: 25 } } };
    expect(warmingAtFill(afterFill({}, learnt))?.warmedK).toBeCloseTo(usual / 1.25, 9);
  });

  it.each([
    ['a sky that was not steady', afterFill({ drySteady: false })],
    ['an afternoon', afterFill({ risingWM2: 0 })],
    ['the second fill of a day', afterFill({}, {}, 2)],
    ['a dry sheet that told nothing', afterFill({ dryTakenWM2: null })],
    ['no calendar', afterFill({}, { sunHeightDeg: null })],
    ['no air sensor', afterFill({}, { told: { panOutletC: 21, storeBottomC: 20 } })],
    ['so much sun that it says nothing of the sensors', afterFill({ dryTakenWM2: 600 })],
    ['the step before', afterFill({}, { runMs: nowMs - 1 })],
    ['the step after', afterFill({}, { runMs: nowMs + 5000 })],
  ])('is not told under %s', (_, situation) => {
    expect(warmingAtFill(situation)).toBeNull();
  });
});

describe('what a fill teaches', () => {
  const warming = { warmedK: 0.4, sdK: 0.2 };

  it('is what the outlet shows beyond that', () => {
    const pair = pairAtFill(afterFill(), warming);
    expect(pair?.offsetK).toBeCloseTo(0.6, 12);
    expect(pair?.sdK).toBe(0.2);
  });

  it('is nothing where the water of the pan comes from a reservoir', () => {
    const reservoir = makeSite('drain-valve', [...commonSensors, 'reservoirC'], { plumbing: 'reservoir' });
    expect(pairAtFill(afterFill({}, { site: reservoir }), warming)).toBeNull();
  });

  it('is believed where it agrees with what is known, and left out where a cloud came after it', () => {
    const expectedK = warmingAtFill(afterFill({ dryTakenWM2: 160 }))?.warmedK ?? 0;
    const seen = (offsetK: number) =>
      learnPair(
        afterFill(
          { dryTakenWM2: 160 },
          {
            told: { ...told, panOutletC: 20 + expectedK + offsetK },
            state: { learnt: { outletOffsetK: 0, outletOffsetSdK: 0.2, endsOffsetK: 0 } },
          },
        ),
      );
    const { outletOffsetK = 0, outletOffsetSdK = 0 } = seen(0.4);
    expect(outletOffsetK).toBeGreaterThan(0.1);
    expect(outletOffsetSdK).toBeLessThan(0.2);
    expect(seen(-1.2)).toEqual({ outletOffsetK: 0, outletOffsetSdK: 0.2, endsOffsetK: 0 });
  });

  it('is the outlet beside the inlet as well, while no dry night has said that', () => {
    const first = learnPair(afterFill({ dryTakenWM2: 160 }));
    const expectedK = warmingAtFill(afterFill({ dryTakenWM2: 160 }))?.warmedK ?? 0;
    expect(first['endsOffsetK']).toBeCloseTo(1 - expectedK, 9);
    const known = learnPair(afterFill({ dryTakenWM2: 160 }, { state: { learnt: { endsOffsetK: 0.3 } } }));
    expect(known['endsOffsetK']).toBe(0.3);
  });
});
