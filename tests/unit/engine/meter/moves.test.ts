import { describe, expect, it } from 'vitest';
import { addMove, meanFillStore, waterAfterMove } from '../../../../controller/engine/meter/totals.ts';
import { panHeatJK } from '../../../../controller/engine/pan.ts';
import { initialState, type Phase, startUp, type WaterMemory } from '../../../../controller/engine/state.ts';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import type { Site } from '../../../../shared-types/site.ts';
import { makeSite } from '../rig.ts';
import { situationOf } from '../situations.ts';

const site = makeSite('drain-valve');
const noOutlet = makeSite('drain-valve', ['panSheetC', 'storeBottomC']);
const phases = {
  empty: { name: 'empty', sinceMs: 0, afterNoGain: false },
  filling: { name: 'filling', sinceMs: 0 },
  circulating: { name: 'circulating', sinceMs: 0, afterFill: true },
  resting: { name: 'resting', sinceMs: 0 },
  emptying: { name: 'emptying', sinceMs: 0, cause: startUp },
  stopped: { name: 'stopped', sinceMs: 0 },
} satisfies Record<Phase['name'], Phase>;
type Name = Phase['name'];

const told = { panOutletC: 30, panSheetC: 26, panInletC: 20, storeBottomC: 19, flowLMin: 20 };
const water: WaterMemory = {
  ...{ level: 'full', drainedMs: 1, emptyingMs: 2, overdue: false, fillStoreC: 18, fillStoreMs: 3 },
  ...{ emptyingPanC: 28, trendC: 25 },
};
const total = { heatHomeJ: 100, heatLostJ: 200, electricityJ: 300, pumpRunS: 400, starts: 5, fills: 6 };
const meter = { ...initialState().meter, total, estimatedJ: 50, filledL: 402 };

const at = (from: Name, kept: Partial<WaterMemory> = {}, where: Site = site) =>
  situationOf({
    state: { phase: phases[from], water: { ...water, ...kept }, meter },
    told,
    site: where,
  });
const move = (from: Name, to: Name, kept: Partial<WaterMemory> = {}, where: Site = site) =>
  addMove(meter, at(from, kept, where), { phase: phases[to], cause: startUp });

describe('what a change of phase adds to the totals', () => {
  it.each<[Name, Name, number, number]>([
    ['empty', 'filling', 1, 0],
    ['filling', 'circulating', 0, 1],
    ['resting', 'circulating', 1, 0],
    ['circulating', 'resting', 0, 0],
    ['filling', 'emptying', 0, 0],
    ['emptying', 'resting', 0, 0],
  ])('from %s to %s: %d starts, %d fills', (from, to, starts, fills) => {
    expect(move(from, to).total).toMatchObject({ starts: 5 + starts, fills: 6 + fills });
  });

  it('is nothing where nothing changes', () => {
    expect(move('filling', 'filling')).toBe(meter);
  });

  it('is the heat of what was emptied, home or lost', () => {
    const warmJ = panHeatJK(site, 23) * 10;
    expect(move('emptying', 'empty')).toEqual({ ...meter, total: { ...total, heatHomeJ: 100 + warmJ } });
    const { total: cold } = move('emptying', 'empty', { emptyingPanC: 8 });
    expect(cold).toEqual({ ...total, heatLostJ: 200 + panHeatJK(site, 13) * 10 });
    expect(move('emptying', 'resting').total).toEqual(total);
  });

  it('is an estimate where no outlet is fitted, as far as it came home', () => {
    const warmJ = panHeatJK(site, 23) * 10;
    expect(move('emptying', 'empty', {}, noOutlet).estimatedJ).toBe(50 + warmJ);
    expect(move('emptying', 'empty', { emptyingPanC: 8 }, noOutlet).estimatedJ).toBe(50);
  });

  it('is what a fill moved beyond the pan, as an estimate', () => {
    const beyondJ = streamHeatW(1, 30, 20, 20) * 60 * 2;
    expect(move('filling', 'circulating')).toEqual({
      ...meter,
      total: { ...total, heatHomeJ: 100 + beyondJ, fills: 7 },
      estimatedJ: 50 + beyondJ,
    });
    expect(move('resting', 'circulating').total.heatHomeJ).toBe(100);
    expect(move('filling', 'emptying').total.heatHomeJ).toBe(100);
  });

  it('counts the water of a fill from nought', () => {
    expect(move('empty', 'filling').filledL).toBe(0);
    expect(move('filling', 'circulating').filledL).toBe(402);
  });
});

describe('what is kept of the water', () => {
  const kept = (from: Name, to: Name, changes: Partial<WaterMemory> = {}) => {
    const situation = at(from, changes);
    return waterAfterMove(situation.state.water, situation, { phase: phases[to], cause: startUp });
  };
  const calm = { ...water, trendC: null };

  it.each<[Name, Name, Partial<WaterMemory>]>([
    ['empty', 'filling', { fillStoreC: 19, fillStoreMs: 0, emptyingPanC: null }],
    ['filling', 'circulating', {}],
    ['circulating', 'emptying', { emptyingPanC: 25 }],
    ['resting', 'emptying', { emptyingPanC: 28 }],
    ['resting', 'stopped', { emptyingPanC: 28 }],
    ['emptying', 'stopped', {}],
    ['emptying', 'empty', { fillStoreC: null, fillStoreMs: 0, emptyingPanC: null }],
    ['circulating', 'resting', { emptyingPanC: null }],
  ])('from %s to %s: %o', (from, to, changes) => {
    expect(kept(from, to)).toEqual({ ...calm, ...changes });
  });

  it('is what it was when the emptying began, whatever ends it', () => {
    expect(kept('emptying', 'stopped', { emptyingPanC: 27 }).emptyingPanC).toBe(27);
  });

  it('is full after a fill alone', () => {
    expect(kept('filling', 'circulating', { level: 'part' }).level).toBe('full');
    expect(kept('resting', 'circulating', { level: 'unknown' }).level).toBe('unknown');
  });

  it('is no temperature of a pan that was not full', () => {
    expect(kept('filling', 'emptying', { level: 'part' }).emptyingPanC).toBeNull();
    expect(kept('filling', 'stopped', { level: 'part' }).emptyingPanC).toBeNull();
  });

  it('is all of it where nothing changes', () => {
    const situation = at('resting');
    expect(waterAfterMove(water, situation, { phase: phases.resting, cause: startUp })).toBe(water);
  });

  it('is not made up for a phase that does not exist', () => {
    const stranger = { name: 'boiling', sinceMs: 0 } as unknown as Phase;
    expect(() => waterAfterMove(water, at('resting'), { phase: stranger, cause: startUp })).toThrow(
      'boiling',
    );
  });
});

describe('the mean of what a fill draws', () => {
  const { readings } = situationOf({ told });
  const { panInletC: _, ...source } = readings;

  it('weighs the inlet, else the source, by time', () => {
    const before = { ...water, fillStoreC: 10, fillStoreMs: 15_000 };
    expect(meanFillStore(before, phases.filling, readings, 5000, site)).toEqual({
      ...{ ...before, fillStoreC: 12.5, fillStoreMs: 20_000 },
    });
    expect(meanFillStore(before, phases.filling, source, 5000, site).fillStoreC).toBe(12.25);
  });

  it('begins with the first reading', () => {
    const fresh = { ...water, fillStoreC: null, fillStoreMs: 0 };
    expect(meanFillStore(fresh, phases.filling, readings, 5000, site)).toMatchObject({
      ...{ fillStoreC: 20, fillStoreMs: 5000 },
    });
    expect(meanFillStore(fresh, phases.filling, readings, 0, site)).toBe(fresh);
  });

  it('waits for a reading, and for a fill', () => {
    expect(meanFillStore(water, phases.filling, {}, 5000, site)).toBe(water);
    expect(meanFillStore(water, phases.circulating, readings, 5000, site)).toBe(water);
  });
});
