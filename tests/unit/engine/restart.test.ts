import { describe, expect, it } from 'vitest';
import type { SoundInput } from '../../../controller/engine/input.ts';
import { isUnseen, restart } from '../../../controller/engine/restart.ts';
import { fullSpeed } from '../../../controller/engine/speed/follow-gain.ts';
import {
  type EngineState,
  initialState,
  noTimers,
  type Phase,
  safeOutputs,
  startUp,
  unknownWater,
  type WaterLevel,
} from '../../../controller/engine/state.ts';
import { noHarvest } from '../../../controller/engine/want/outlook.ts';
import { calmFlow } from '../../../controller/engine/watch/memory.ts';
import type { Feedback, Outputs } from '../../../shared-types/engine.ts';
import { allSensors, Loop, makeSite, type SiteKind } from './rig.ts';

const site = makeSite('drain-valve');
const expiryMs = site.control.outputExpiryS * 1000;
const pumping: Outputs = { ...safeOutputs, pumpFraction: 1, drainOpen: false };
const holding: Outputs = { ...safeOutputs, drainOpen: false };
const draining: Outputs = { ...safeOutputs, drainPumpOn: true };

function unseen(
  elapsedMs: number | null,
  outputs: Outputs = pumping,
  feedback: Feedback | null = null,
  stepped = true,
): boolean {
  const input = { elapsedMs, feedback } as SoundInput;
  return isUnseen({ ...initialState(), stepped, outputs }, input, site);
}

describe('time that nobody saw', () => {
  it('is what nobody knows, and what was before the first step', () => {
    expect(unseen(null)).toBe(true);
    expect(unseen(5, pumping, null, false)).toBe(true);
    expect(unseen(5)).toBe(false);
  });

  it('begins when outputs have expired that were not safe', () => {
    expect([unseen(expiryMs), unseen(expiryMs + 1)]).toEqual([false, true]);
    const late = expiryMs + 1;
    expect([unseen(late, safeOutputs), unseen(late, holding), unseen(late, draining)]).toEqual([
      false,
      true,
      true,
    ]);
    expect(unseen(late, { ...safeOutputs, pumpFraction: 0.5 })).toBe(true);
  });

  it.each([
    ['a running pump', pumping, { pumpFraction: 1, drainOpen: null, ageMs: 999 }, false],
    ['feedback from before the expiry', pumping, { pumpFraction: 1, drainOpen: null, ageMs: 1000 }, true],
    ['a pump that stands', pumping, { pumpFraction: 0, drainOpen: false, ageMs: 0 }, true],
    ['a drain that is still shut', holding, { pumpFraction: 0, drainOpen: false, ageMs: 0 }, false],
    ['a drain that has opened', holding, { pumpFraction: 0, drainOpen: true, ageMs: 0 }, true],
    ['a drain of which nothing is told', holding, { pumpFraction: 0, drainOpen: null, ageMs: 0 }, true],
  ])('a second after the expiry, with %s', (_, outputs, feedback, expected) => {
    expect(unseen(expiryMs + 1000, outputs, feedback)).toBe(expected);
  });
});

const circulating: Phase = { name: 'circulating', sinceMs: 5, afterFill: true };

describe('a restart', () => {
  const start = initialState();
  const before: EngineState = {
    ...start,
    localDay: '2031-06-21',
    watch: {
      ...start.watch,
      lookedMs: 3,
      darkMs: 4,
      still: { panOutletC: { lowC: 1, highC: 2 } },
      nightDewC: 5,
    },
    sensing: {
      panOutletC: { recent: [], arrivedMs: 1, changedMs: 1, scatter: 0, unreadable: 0, cause: null },
    },
    phase: circulating,
    water: { ...unknownWater, level: 'full', drainedMs: 6, overdue: true, fillStoreC: 7, trendC: 8 },
    timers: { ...noTimers, fillMs: 1 },
    gain: { lowC: 1, sinceMs: 2 },
    harvest: { ...noHarvest, gainW: 300, clearFraction: 0.4, lostJ: 5 },
    outputs: pumping,
    pump: { sinceMs: 5, startsMs: [5], exercising: true },
    speed: { fraction: 0.5, direction: 1, movedMs: 9 },
    frost: {
      latched: 'frost-trend',
      warmMs: 1,
      keepWarmMs: 2,
      nightC: 3,
      storeCold: true,
      fall: { sinceMs: 1, fromC: 2, fallsKS: [] },
    },
    heat: { storeFull: true, linerHot: true, cooling: true },
    flow: { ...calmFlow, pumping: true, kind: 2, flowLMin: 19 },
    upkeep: { ...start.upkeep, lowFlowLMin: 3, restMm: 40, restFromMm: 41, lostMm: 2, sheetExcessK: 5 },
    failure: { count: 1, cause: 'no-flow' },
    operator: { lease: { kind: 'rest', untilMs: 99 }, seen: ['request-1'] },
    meter: { ...start.meter, estimatedJ: 5, filledL: 6, rateW: 7 },
    learnt: { fullFlowLMin: 18 },
  };

  it('forgets what may have changed unseen, and keeps all else', () => {
    expect(restart(before, site, 100)).toEqual({
      ...before,
      runMs: 100,
      stepped: true,
      sensing: {},
      watch: { ...before.watch, darkMs: null, still: {}, nightDewC: null },
      phase: { name: 'emptying', sinceMs: 100, cause: startUp },
      water: { ...unknownWater, overdue: true },
      timers: noTimers,
      gain: null,
      harvest: { ...noHarvest, clearFraction: 0.4 },
      outputs: safeOutputs,
      pump: { sinceMs: 100, startsMs: [5], exercising: false },
      speed: fullSpeed,
      frost: { ...before.frost, warmMs: null, keepWarmMs: null, fall: null },
      heat: { storeFull: true, linerHot: true, cooling: false },
      flow: { ...calmFlow, kind: 2 },
      upkeep: { ...before.upkeep, restMm: null, restFromMm: null, sheetExcessK: null },
      operator: { lease: null, seen: ['request-1'] },
      meter: { ...before.meter, rateW: null },
    });
  });

  it.each<[SiteKind, WaterLevel, WaterLevel]>([
    ['drain-valve', 'full', 'unknown'],
    ['drain-valve', 'empty', 'unknown'],
    ['corner', 'full', 'unknown'],
    ['corner', 'part', 'unknown'],
    ['corner', 'empty', 'empty'],
  ])('takes the water of %s that was %s for %s', (kind, level, after) => {
    const state = { ...before, water: { ...before.water, level } };
    expect(restart(state, makeSite(kind), 100).water.level).toBe(after);
  });

  it('empties where it can, rests where it cannot, and stays locked', () => {
    expect(restart(before, makeSite('pump-stop'), 100).phase).toMatchObject({ name: 'emptying' });
    expect(restart(before, makeSite('corner'), 100).phase).toEqual({ name: 'resting', sinceMs: 100 });
    const locked: EngineState = { ...before, phase: { name: 'stopped', sinceMs: 5 } };
    expect(restart(locked, site, 100).phase).toEqual({ name: 'stopped', sinceMs: 100 });
    expect(restart(locked, makeSite('corner'), 100).phase).toEqual({ name: 'stopped', sinceMs: 100 });
  });
});

describe('the first step of a pan that cannot be emptied', () => {
  it('starts no pump, even where nothing has to hold for any time', () => {
    const quick = { startDelayS: 0, leastOffS: 0 };
    const loop = new Loop(makeSite('corner', allSensors), quick);
    loop.set({ panOutletC: 30, panSheetC: 30, panLevelMm: 40, flowLMin: 0 }).step();
    expect([loop.phase, loop.why]).toEqual(['resting', 'start-up-proving']);
    expect(loop.step().phase).toBe('circulating');
  });
});
