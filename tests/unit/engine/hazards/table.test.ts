import { describe, expect, it } from 'vitest';
import { hazards } from '../../../../controller/engine/hazards/table.ts';
import { type EngineState, initialState } from '../../../../controller/engine/state.ts';
import type { ReasonCode } from '../../../../shared-types/reasons.ts';
import { makeSite } from '../rig.ts';
import { type Given, nowMs, situationOf } from '../situations.ts';
import { reservoirSite } from '../watch-rig.ts';

const initial = initialState();
const warm = { panOutletC: 30, panSheetC: 30, storeBottomC: 20, ambientC: 15 };
const corner = makeSite('corner');
const frost = (changes: Partial<EngineState['frost']>) => ({ frost: { ...initial.frost, ...changes } });
const flow = (changes: Partial<EngineState['flow']>) => ({ flow: { ...initial.flow, ...changes } });
const heat = (changes: Partial<EngineState['heat']>) => ({ heat: { ...initial.heat, ...changes } });
const phase = (name: string, forMs: number) =>
  ({ phase: { name, sinceMs: nowMs - forMs, afterFill: false } }) as Partial<EngineState>;

function hazard(code: ReasonCode) {
  const found = hazards.find((one) => one.code === code);
  if (found === undefined) throw new Error(`no protection ${code}`);
  return found;
}

/** Numbers of a protection, and where it leads. */
const seen = (code: ReasonCode, { told = warm, ...given }: Given = {}) => {
  const situation = situationOf({ told, ...given });
  return [hazard(code).when(situation), hazard(code).goal(situation)];
};

describe('the protections', () => {
  it('hold none on a warm loop at rest', () => {
    const situation = situationOf({ told: warm, level: 'full', state: phase('resting', 1000) });
    for (const { code, when } of hazards) expect([code, when(situation)]).toEqual([code, null]);
  });

  it.each([
    ['dry-running', 'dry-running'],
    ['no-flow', 'no-flow'],
    ['drain-stands-open', 'drain-stands-open'],
    ['fill-failed', 'fill-failed'],
    ['water-lost', 'water-lost'],
    ['frost-measured', undefined],
    ['reservoir-low', undefined],
    ['liner-heat', undefined],
  ] as const)('%s counts as a failure: %s', (code, fails) => {
    expect(hazard(code).fails).toBe(fails);
  });

  it('say how long the pump ran dry, and why', () => {
    const timers = { ...initial.timers, noFlowMs: nowMs - 15_000 };
    const state = { timers, ...flow({ kind: 2 }) };
    const settings = { ...situationOf().settings, dryRunS: 15 };
    expect(seen('dry-running', { state, settings })).toEqual([{ dryS: 15, noFlowKind: 2 }, 'empty']);
    const early = { timers: { ...timers, noFlowMs: nowMs - 14_999 } };
    expect(seen('dry-running', { state: early, settings })[0]).toBeNull();
  });

  it('stop a pump that would run dry for more than 20 s before the next step', () => {
    const dry = (forMs: number) =>
      seen('dry-running', {
        state: { timers: { ...initial.timers, noFlowMs: nowMs - forMs } },
        settings: { ...situationOf().settings, dryRunS: 60 },
      })[0];
    expect(dry(15_000)).toBeNull();
    expect(dry(15_001)).toMatchObject({ dryS: 15.001 });
  });

  it('say how far the pan stands above a flow that is none', () => {
    const state = { ...phase('circulating', 900_000), ...flow({ hotMs: nowMs - 180_000, kind: 3 }) };
    expect(seen('no-flow', { state })).toEqual([{ excessK: 10, noFlowKind: 3 }, 'empty']);
    expect(seen('no-flow', { state, told: {} })[0]).toEqual({ noFlowKind: 3 });
  });

  it('say how long the drain stood open', () => {
    const open = (forMs: number) => ({
      state: { timers: { ...initial.timers, drainOpenMs: nowMs - forMs } },
    });
    expect(seen('drain-stands-open', open(10_000))).toEqual([{ openS: 10 }, 'empty']);
    expect(seen('drain-stands-open', open(9999))[0]).toBeNull();
  });

  it('give a fill its time', () => {
    const fill = (forMs: number, level: 'part' | 'full' = 'part', name = 'filling') =>
      seen('fill-failed', { state: phase(name, forMs), level })[0];
    expect(fill(200_000)).toEqual({ fillTimeoutS: 200 });
    expect(seen('fill-failed')[1]).toBe('empty');
    expect([fill(199_999), fill(200_000, 'full'), fill(200_000, 'part', 'resting')]).toEqual([
      ...[null, null, null],
    ]);
  });

  it('know a resting pan that lost its water, where it can be emptied and no pump runs on', () => {
    const state = phase('resting', 5000);
    const given = { state, level: 'empty', told: { ...warm, panLevelMm: 1 } } as const;
    expect(seen('water-lost', given)).toEqual([{ levelMm: 1 }, 'empty']);
    expect(seen('water-lost', { ...given, told: warm })[0]).toEqual({});
    expect(seen('water-lost', { ...given, site: corner })[0]).toBeNull();
    expect(seen('water-lost', { ...given, level: 'part' })[0]).toBeNull();
    expect(seen('water-lost', { ...given, state: phase('emptying', 5000) })[0]).toBeNull();
    const runsOn = { ...state, ...flow({ runsOnMs: nowMs - 20_000 }) };
    expect(seen('water-lost', { ...given, state: runsOn })[0]).toBeNull();
  });

  it('empty a pan at frost, or pump while it is kept warm', () => {
    const told = { ...warm, panOutletC: 5 };
    const measured = { latched: 'frost-measured' } as const;
    expect(seen('frost-measured', { told, state: frost(measured) })).toEqual([
      { panC: 5, frostTemperatureC: 4 },
      'empty',
    ]);
    const over = { told: { ...warm, panOutletC: 5.1 }, state: frost(measured) };
    expect(seen('frost-measured', over)[0]).toBeNull();
    expect(seen('frost-measured', { told })[0]).toBeNull();
    expect(seen('frost-measured', { state: frost({ ...measured, keepWarmMs: 0 }) })).toEqual([
      { panC: 30, frostTemperatureC: 4 },
      'run',
    ]);
  });

  it('judge frost by the air where the pan is blind', () => {
    const air = (ambientC: number, more: object = {}) => ({
      told: { storeBottomC: 20, ambientC, ...more },
      state: frost({ latched: 'frost-blind' }),
    });
    const { blindFrostAmbientC: limitC } = situationOf().settings;
    expect(seen('frost-blind', air(limitC))).toEqual([
      { ambientC: limitC, blindFrostAmbientC: limitC },
      'empty',
    ]);
    expect(seen('frost-blind', air(limitC + 0.1))[0]).toBeNull();
    expect(seen('frost-blind', air(0, { panOutletC: 20 }))[0]).toBeNull();
    expect(seen('frost-blind', { ...air(0), state: {} })[0]).toBeNull();
    expect(seen('frost-blind', { ...air(0), told: {} })[0]).toBeNull();
  });

  it('keep the drain shut under a pump that runs on, where the loop is not blind', () => {
    const state = flow({ runsOnMs: nowMs - 20_000 });
    expect(seen('pump-runs-on', { state })).toEqual([{ runS: 20 }, 'rest']);
    expect(seen('pump-runs-on', { state, site: makeSite('pump-stop') })[1]).toBe('empty');
    expect(seen('pump-runs-on', { state, told: { panOutletC: 30 } })[0]).toBeNull();
    expect(seen('pump-runs-on', { state, told: { storeBottomC: 20 } })[0]).toBeNull();
  });

  it('empty a pan that falls towards frost, as long as that is what was seen', () => {
    const fall = { sinceMs: 0, fromC: 9, fallsKS: [0.05, 0.06, 0.07] };
    const falls = (latched: 'frost-trend' | 'frost-blind', panOutletC = 7) =>
      seen('frost-trend', { told: { panOutletC }, state: frost({ latched, fall }) });
    expect(falls('frost-trend')).toEqual([{ panC: 7, fallKH: 180, dangerMin: 2 }, 'empty']);
    expect([falls('frost-blind')[0], falls('frost-trend', 7.1)[0]]).toEqual([null, null]);
  });

  it('lock after the second failure', () => {
    const failed = (count: number) =>
      seen('fill-failed-locked', { state: { failure: { count, cause: 'no-flow' } } });
    expect([failed(1)[0], failed(2)]).toEqual([null, [{ failures: 2 }, 'lock']]);
  });

  it('wait for the release', () => {
    const waits = (changes: object) => seen('frost-waiting-release', { state: frost(changes) });
    const { frostReleaseC, frostReleaseMin } = situationOf().settings;
    expect(waits({ latched: 'frost-trend' })).toEqual([
      { frostReleaseC, frostReleaseMin, heldMin: 0 },
      'empty',
    ]);
    expect(waits({ latched: 'frost-blind', warmMs: nowMs - 120_000 })[0]).toMatchObject({ heldMin: 2 });
  });

  it('fill from no reservoir that lacks water', () => {
    const state = {
      ...phase('empty', 900_000),
      upkeep: { ...initial.upkeep, reservoirMm: 429, neededMm: 430 },
    };
    const given = { site: reservoirSite, told: { ...warm, reservoirLevelMm: 428 }, state };
    expect(seen('reservoir-low', given)).toEqual([{ levelMm: 428, neededMm: 430 }, 'empty']);
    const drawn = { ...phase('filling', 5000), ...flow({ shortMs: nowMs - 10_000 }) };
    expect(seen('reservoir-low', { ...given, state: drawn })[0]).toEqual({ levelMm: 428 });
  });

  it('fill no pan in season that cannot be emptied', () => {
    const state = { airLows: { todayC: 4, daysC: [] } };
    expect(seen('frost-season', { site: corner, state })).toEqual([{ panC: 30 }, 'rest']);
    expect(seen('frost-season', { site: corner, state, level: 'full' })[0]).toBeNull();
    expect(seen('frost-season', { state })[0]).toBeNull();
  });

  it('empty before a night of frost what would not outlast it', () => {
    const ahead = frost({ nightC: -3 });
    const { frostNightC } = situationOf().settings;
    expect(seen('frost-predicted', { state: ahead, level: 'part' })).toEqual([
      { nightC: -3, frostNightC },
      'empty',
    ]);
    expect(seen('frost-predicted', { state: ahead, level: 'full', site: corner })[0]).toBeNull();
    expect(seen('frost-predicted', { state: ahead, level: 'part', site: corner })[0]).not.toBeNull();
    expect(seen('frost-predicted', { level: 'part' })[0]).toBeNull();
    const cold = { state: ahead, level: 'full', told: { panOutletC: 5, ambientC: 3 } } as const;
    expect(seen('frost-predicted', cold)[0]).not.toBeNull();
    expect(seen('frost-predicted', { ...cold, site: corner })[0]).toBeNull();
  });

  it('name the sensors that failed', () => {
    expect(seen('sensors-failed', { told: { panOutletC: 30 } })).toEqual([
      { storeFailed: 1, panFailed: 0 },
      'empty',
    ]);
    expect(seen('sensors-failed', { told: { storeBottomC: 20 } })[0]).toEqual({
      ...{ storeFailed: 0, panFailed: 1 },
    });
  });

  it('know a store at frost, and one that is full', () => {
    const cold = seen('store-at-frost', { state: frost({ storeCold: true }) });
    expect(cold).toEqual([{ storeC: 20, frostTemperatureC: 4 }, 'empty']);
    expect(seen('store-limit', { state: heat({ storeFull: true }) })).toEqual([
      { storeC: 20, storeLimitC: 60 },
      'rest',
    ]);
    expect(seen('store-limit', { state: heat({ storeFull: true, cooling: true }) })[0]).toBeNull();
  });

  it('cool a hot liner with a store that is colder than the full pan', () => {
    const hot = (level: 'part' | 'full', panOutletC: number, linerHot = true) =>
      seen('liner-heat', { state: heat({ linerHot }), level, told: { panOutletC, storeBottomC: 20 } });
    expect(hot('full', 20.1)).toEqual([{ panC: 20.1, linerHotC: 72 }, 'run']);
    expect([hot('full', 20)[0], hot('part', 30)[0], hot('full', 30, false)[0]]).toEqual([null, null, null]);
    const blind = { state: heat({ linerHot: true }), level: 'full', told: { panOutletC: 80 } } as const;
    expect(seen('liner-heat', blind)[0]).toBeNull();
  });
});
