import { describe, expect, it } from 'vitest';
import { endsOf, endsPair, sourceOf } from '../../../../controller/engine/meter/ends.ts';
import { readingErrorFraction } from '../../../../controller/engine/meter/error.ts';
import { flowOf, readHeat } from '../../../../controller/engine/meter/heat-rate.ts';
import { panHeatJK } from '../../../../controller/engine/pan.ts';
import {
  type EngineState,
  initialState,
  safeOutputs,
  type WaterLevel,
} from '../../../../controller/engine/state.ts';
import { streamHeatW, waterDensityKgM3, waterHeatJKgK } from '../../../../controller/engine/water.ts';
import type { Channel } from '../../../../shared-types/channels.ts';
import type { Site } from '../../../../shared-types/site.ts';
import { makeSite } from '../rig.ts';
import { situationOf } from '../situations.ts';

const site = makeSite('drain-valve');
const noOutlet = makeSite('drain-valve', ['panSheetC', 'storeBottomC']);
const reservoir = makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'reservoirC'], {
  plumbing: 'reservoir',
});
type Told = Partial<Record<Channel, number>>;
const streamWK = (20 / 60_000) * waterDensityKgM3(20) * waterHeatJKgK(20);

describe('the ends of the pan', () => {
  const ends = (told: Told, where: Site = site, state: Partial<EngineState> = {}) =>
    endsOf(situationOf({ told, site: where, state }), 20);

  it('are outlet and inlet, else outlet and source', () => {
    expect([sourceOf(site), sourceOf(reservoir)]).toEqual(['storeBottomC', 'reservoirC']);
    const told = { panOutletC: 30, panInletC: 20, storeBottomC: 19, reservoirC: 18 };
    expect(ends(told)).toEqual({ hotC: 30, coldC: 20, estimated: false });
    expect(ends({ panOutletC: 30, storeBottomC: 19, reservoirC: 18 })).toMatchObject({ coldC: 19 });
    expect(ends({ panOutletC: 30, storeBottomC: 19, reservoirC: 18 }, reservoir)).toMatchObject({
      coldC: 18,
    });
  });

  it('have their offsets taken off', () => {
    const state = { learnt: { endsOffsetK: 0.5, outletOffsetK: 0.75, outletOffsetSdK: 0.2 } };
    expect(ends({ panOutletC: 30, panInletC: 20 }, site, state).hotC).toBe(29.5);
    expect(ends({ panOutletC: 30, storeBottomC: 20 }, site, state).hotC).toBe(29.25);
  });

  it('are guessed from the sheet where no outlet is fitted, not where one failed', () => {
    const hotC = 20 + 4 / (0.5 + streamWK / 2000);
    const seen = ends({ panSheetC: 24, storeBottomC: 20 }, noOutlet);
    expect(seen).toMatchObject({ coldC: 20, estimated: true });
    expect(seen.hotC).toBeCloseTo(hotC, 12);
    expect(ends({ panSheetC: 24, storeBottomC: 20 })).toEqual({ coldC: 20, hotC: null, estimated: false });
    expect(ends({ panSheetC: 24 }, noOutlet)).toEqual({ coldC: null, hotC: null, estimated: false });
    expect(ends({ storeBottomC: 20 }, noOutlet)).toEqual({ coldC: 20, hotC: null, estimated: true });
  });

  it('leave out of the guess what warms the water in the pan', () => {
    const water = { ...initialState().water, trendC: 23.7 };
    const storedK = (panHeatJK(site, 20) * 0.001) / 2000;
    const seen = ends({ panSheetC: 24, storeBottomC: 20 }, noOutlet, { water });
    expect(seen.hotC).toBeCloseTo(20 + (4 - storedK) / (0.5 + streamWK / 2000), 9);
  });
});

describe('the offset of the ends', () => {
  const pair = { outletOffsetK: 0.7, outletOffsetSdK: 0.2 };
  it.each([
    ['an inlet that was compared', site, { ...pair, endsOffsetK: 0.4 }, true, { offsetK: 0.4, sdK: 0.3 }],
    ['an inlet that was not', site, pair, true, { offsetK: 0, sdK: null }],
    ['a store that was compared', site, pair, false, { offsetK: 0.7, sdK: 0.2 }],
    ['a store that was not', site, {}, false, { offsetK: 0, sdK: null }],
    ['an offset without its spread', site, { outletOffsetK: 0.7 }, false, { offsetK: 0, sdK: null }],
    ['a spread without its offset', site, { outletOffsetSdK: 0.2 }, false, { offsetK: 0, sdK: null }],
    ['a reservoir', reservoir, pair, false, { offsetK: 0, sdK: null }],
  ] as const)('with %s', (_, where, learnt, hasInlet, expected) => {
    expect(endsPair(where, learnt as EngineState['learnt'], hasInlet)).toEqual(expected);
  });
});

describe('the heat that comes home', () => {
  const told = { panOutletC: 30, panInletC: 20, flowLMin: 20 };
  const read = (given: Told, level: WaterLevel = 'full', name = 'circulating', where: Site = site) => {
    const phase = { name, sinceMs: 0, afterFill: false } as EngineState['phase'];
    const state = { phase, outputs: { ...safeOutputs, pumpFraction: 1 } };
    return readHeat(situationOf({ told: given, level, site: where, state }));
  };
  const none = { rateW: 0, flowLMin: 20, estimated: false, errorFraction: null };

  it('is that of a full pan in circulation', () => {
    expect(read(told)).toMatchObject({ rateW: streamHeatW(20, 30, 20, 20), flowLMin: 20, estimated: false });
    expect(read(told, 'part')).toEqual(none);
    expect(read(told, 'full', 'resting')).toEqual(none);
  });

  it('is told with its error by what of it was guessed', () => {
    const { panOutletC, panInletC } = told;
    expect(read({ panOutletC, panInletC }).errorFraction).toBeCloseTo(0.2 + 0.1 + 0.008, 12);
    expect(read({ panOutletC, panInletC })).toMatchObject({ flowLMin: 20, estimated: true });
    const sheet = read({ panSheetC: 24, storeBottomC: 20, flowLMin: 20 }, 'full', 'circulating', noOutlet);
    expect(sheet.estimated).toBe(true);
    const sizeK = 4 / (0.5 + streamWK / 2000);
    expect(sheet.errorFraction).toBeCloseTo(0.0305 + 1 / sizeK + 0.005 + 0.03 / sizeK, 12);
  });

  it('is not told without both ends', () => {
    const unknown = { rateW: null, flowLMin: 20, estimated: false, errorFraction: null };
    expect(read({ panInletC: 20, flowLMin: 20 })).toEqual(unknown);
    expect(read({ panOutletC: 30, flowLMin: 20 })).toEqual(unknown);
    expect(read({ panOutletC: 30 })).toEqual({ ...unknown, estimated: true });
    expect(read({ storeBottomC: 20, flowLMin: 20 }, 'full', 'circulating', noOutlet)).toEqual({
      ...unknown,
      estimated: true,
    });
  });

  it('is nought for a flow of nought, whichever end is the warmer, and for a reversed one', () => {
    expect(read({ panOutletC: 10, panInletC: 20, flowLMin: 0 }).rateW).toBe(0);
    expect(read({ ...told, flowLMin: -5 })).toEqual({ ...none, flowLMin: -5 });
  });

  it('has a flow by the speed of the pump where none is measured', () => {
    const state = { outputs: { ...safeOutputs, pumpFraction: 0.5 }, learnt: { fullFlowLMin: 18 } };
    expect(flowOf(situationOf({ state }))).toEqual({ flowLMin: 9, estimated: true });
    expect(flowOf(situationOf({}))).toEqual({ flowLMin: 0, estimated: true });
  });
});

describe('the error of a reading', () => {
  const error = (flowLMin: number, differenceK: number, learnt: EngineState['learnt'] = {}) =>
    readingErrorFraction(situationOf({ state: { learnt }, told: { storeBottomC: 20 } }), {
      ...{ flowLMin, differenceK, estimated: false },
    });

  it('is none where no heat flows', () => {
    expect([error(0, 10), error(-1, 10), error(20, 0)]).toEqual([null, null, null]);
  });

  it('counts a difference by its size', () => {
    expect(error(20, -10)).toBe(error(20, 10));
  });

  it('takes a flow beyond the full one for the full one', () => {
    expect(error(40, 10)).toBe(error(20, 10));
    expect(error(9, 10, { fullFlowLMin: 18 })).toBeCloseTo(0.03 + 0.001 + 0.1 + 0.008, 12);
  });

  it('takes the pair that the heat is measured by', () => {
    const told = { storeBottomC: 20, panInletC: 20 };
    const state = { learnt: { endsOffsetK: 0, outletOffsetK: 0, outletOffsetSdK: 0.2 } };
    const reading = { flowLMin: 20, differenceK: 10, estimated: false };
    expect(readingErrorFraction(situationOf({ state, told }), reading)).toBeCloseTo(
      0.0305 + 0.06 + 0.008,
      12,
    );
  });

  it('allows for two deviations of a learnt offset, or for what the standard permits a pair', () => {
    expect(error(20, 10, { outletOffsetK: 0, outletOffsetSdK: 0.2 })).toBeCloseTo(0.0305 + 0.04 + 0.008, 12);
    expect(error(20, 10, { outletOffsetK: 0, outletOffsetSdK: 0.01 })).toBeCloseTo(
      0.0305 + 0.014 + 0.008,
      12,
    );
  });
});
