import { describe, expect, it } from 'vitest';
import { calmFlow } from '../../../../controller/engine/watch/memory.ts';
import { noFlowKinds } from '../../../../controller/engine/watch/no-flow-kind.ts';
import { hasSunk, watch } from '../../../../controller/engine/watch/update.ts';
import { makeSite } from '../rig.ts';
import { level, reservoirSite, type Scene, situationOf } from '../watch-rig.ts';

const nowMs = 3_600_000;
const running = { ...calmFlow, pumping: true };
const outputs = (pumpFraction: number) => ({
  outputs: { pumpFraction, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false },
});
const phase = (name: string, forMs = 60_000) => ({
  phase: { name, sinceMs: nowMs - forMs, afterFill: false },
});
const flowOf = (scene: Scene) => watch(situationOf(scene)).state.flow;

describe('what is watched while the pump is to run', () => {
  it('begins with it, and ends with it but for why it was stopped', () => {
    expect(flowOf({}).pumping).toBe(true);
    const before = { ...running, kind: 2, runsOnMs: 5, flowLMin: 18, lowMs: 7, primed: true };
    expect(flowOf({ state: { flow: before, ...phase('resting') } })).toEqual({
      ...{ ...calmFlow, kind: 2, runsOnMs: 5 },
    });
    const calm = { ...calmFlow, kind: 2 };
    expect(flowOf({ state: { flow: calm, ...phase('resting') } })).toBe(calm);
    expect(flowOf({ state: { flow: before } })).toMatchObject({ kind: 2, runsOnMs: null, primed: true });
  });

  it('leaves the whole situation alone where nothing changed', () => {
    const situation = situationOf({ state: phase('resting') });
    expect(watch(situation)).toBe(situation);
  });
});

describe('a pump that fills', () => {
  const filling = phase('filling');

  it.each([
    ['2 L/min, the least', { flowLMin: 2 }, filling, true],
    ['less', { flowLMin: 1.9 }, filling, false],
    ['nothing measured', {}, filling, false],
    ['nothing measured, while its output is still off', {}, { ...filling, ...outputs(0) }, false],
    ['enough, but it circulates', { flowLMin: 20 }, phase('circulating'), false],
  ])('has primed by %s', (_, values, state, primed) => {
    expect(flowOf({ values, state: { flow: running, ...state } }).primed).toBe(primed);
  });

  it('teaches once how long that took', () => {
    const learnt = (primed: boolean) =>
      watch(situationOf({ values: { flowLMin: 20 }, state: { flow: { ...running, primed }, ...filling } }))
        .state.learnt;
    expect([learnt(false), learnt(true)]).toEqual([{ primingS: 60 }, {}]);
  });
});

describe('why no water moves', () => {
  const stops = { timers: { noFlowMs: nowMs - 15_000, drainOpenMs: null }, flow: { ...running, kind: 3 } };
  const values = { pumpPowerW: 0 };

  it('is noted at the step at which the pump is stopped for it', () => {
    expect(flowOf({ values, state: stops }).kind).toBe(noFlowKinds.dead);
    const going = { ...stops, timers: { ...stops.timers, noFlowMs: null } };
    expect(flowOf({ values, state: going }).kind).toBe(3);
    expect(flowOf({ values, state: { ...stops, ...phase('resting') } }).kind).toBe(3);
  });

  it('is noted when temperatures tell it', () => {
    const still = { ...running, kind: 3, stillInletC: 30, stillMs: nowMs - 300_000 };
    const apart = { ...values, panInletC: 30, storeBottomC: 20 };
    const later = { ...still, stillMs: nowMs - 299_999 };
    expect(flowOf({ values: apart, state: { flow: still } }).kind).toBe(noFlowKinds.dead);
    expect(flowOf({ values: apart, state: { flow: later } }).kind).toBe(3);
  });
});

describe('a pan that sinks', () => {
  const circulating = { ...phase('circulating'), ...outputs(1), water: { level: 'part' } };
  const filled = (filledL: number) => ({
    ...{ ...phase('filling'), ...outputs(1), water: { level: 'empty' }, meter: { filledL, rateW: null } },
  });
  const metered = { panLevelMm: 1, flowLMin: 20 };
  const free = makeSite('pump-stop', ['panOutletC', 'storeBottomC', 'panLevelMm', 'flowLMin']);

  it.each([
    ['under full circulation', { panLevelMm: 20 }, circulating, level, true],
    ['at 0.99 of the speed', { panLevelMm: 20 }, { ...circulating, ...outputs(0.99) }, level, true],
    ['at less', { panLevelMm: 20 }, { ...circulating, ...outputs(0.98) }, level, false],
    ['in one that is full', { panLevelMm: 40 }, { ...circulating, water: { level: 'full' } }, level, false],
    ['without a level', {}, circulating, level, false],
    ['with a free outlet', { panLevelMm: 20 }, circulating, free, false],
    ['in one that stays empty with 160 L pumped', metered, filled(160), level, true],
    ['with less pumped', metered, filled(159.9), level, false],
    ['in one that fills', metered, { ...filled(160), water: { level: 'part' } }, level, false],
    ['without a flow', { panLevelMm: 1 }, filled(160), level, false],
    ['in filling without a level', { flowLMin: 20 }, filled(160), level, false],
    ['in filling with a free outlet', metered, filled(160), free, false],
  ])('is seen %s: or not', (_, values, state, site, seen) => {
    const { sinksMs } = flowOf({ site, values, state: { flow: running, ...state } });
    expect(sinksMs).toBe(seen ? nowMs : null);
  });

  it('has sunk after a minute of it while the pump is to run', () => {
    const sunk = (sinksMs: number, name: string) =>
      hasSunk(situationOf({ state: { flow: { ...running, sinksMs }, ...phase(name) } }));
    expect(['circulating', 'filling', 'resting'].map((name) => sunk(nowMs - 60_000, name))).toEqual([
      ...[true, true, false],
    ]);
    expect(sunk(nowMs - 59_999, 'filling')).toBe(false);
  });
});

describe('what is kept beside it', () => {
  it('is what is found of the upkeep, though nothing was learnt', () => {
    const low = { ...running, flowLMin: 10, lowMs: nowMs - 600_000, smoothedMs: 5000 };
    const state = { flow: low, ...phase('circulating', 900_000) };
    const watched = watch(situationOf({ values: { flowLMin: 10 }, state })).state;
    expect([watched.upkeep.lowFlowLMin, watched.learnt]).toEqual([10, {}]);
  });

  it('is since when the flow, or the level of the reservoir, is low', () => {
    const low = { ...running, flowLMin: 10, lowMs: 7 };
    const settled = phase('circulating', 900_000);
    expect(flowOf({ values: { flowLMin: 10 }, state: { flow: low, ...settled } }).lowMs).toBe(7);
    expect(flowOf({ values: { flowLMin: 20 }, state: { flow: running, ...settled } }).lowMs).toBeNull();
    const short = { ...running, shortMs: 9 };
    const values = { reservoirLevelMm: 20 };
    expect(flowOf({ site: reservoirSite, values, state: { flow: short } }).shortMs).toBe(9);
  });
});
