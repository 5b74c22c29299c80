import { describe, expect, it } from 'vitest';
import { readHeat } from '../../../../controller/engine/meter/heat-rate.ts';
import type { Situation } from '../../../../controller/engine/situation.ts';
import type { GainMemory, Phase, Timers, WaterLevel } from '../../../../controller/engine/state.ts';
import { initialState } from '../../../../controller/engine/state.ts';
import { batchWarms } from '../../../../controller/engine/want/batch.ts';
import { unsureW } from '../../../../controller/engine/want/net-gain.ts';
import { isNotWorthPumping } from '../../../../controller/engine/want/pump-cost.ts';
import {
  differencesOf,
  needsFill,
  settlingMs,
  updateGain,
  updateTimers,
} from '../../../../controller/engine/want/timers.ts';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import { makeSite, quickSettings } from '../rig.ts';
import { nowMs } from '../situations.ts';
import { given, resting, since, type Told } from './wants.ts';

const stops = makeSite('pump-stop');
const empty: Phase = { name: 'empty', sinceMs: 0, afterNoGain: false };
const going: Phase = { name: 'circulating', sinceMs: since(3_600_000), afterFill: true };
const jumped = (value: number) => ({ quality: 'doubtful', value, ageMs: 0, cause: 'jumped' }) as const;
const learnt = (outletOffsetSdK: number) => ({ learnt: { outletOffsetK: 0, outletOffsetSdK } });
const apart = (differenceK: number) => ({ panOutletC: 20 + differenceK, storeBottomC: 20 });

describe('a pan', () => {
  it.each<[Phase, WaterLevel, boolean]>([
    [empty, 'full', true],
    [resting, 'part', true],
    [resting, 'full', false],
    [going, 'part', false],
  ])('%o, %s, needs a fill: %s', (phase, level, needs) => {
    expect(needsFill(given({ phase, level }))).toBe(needs);
  });

  it('warms its batch below the batch temperature', () => {
    const settings = { ...quickSettings, batchRunning: 1, batchTemperatureC: 40 };
    const warms = (told: object, changes: Told = {}) => batchWarms(given({ told, settings, ...changes }));
    expect([warms({ panOutletC: 39.9 }), warms({ panOutletC: 40 }), warms({})]).toEqual([true, false, false]);
    expect(warms({ panOutletC: 30 }, { site: stops })).toBe(false);
    expect(warms({ panOutletC: 30 }, { settings: quickSettings })).toBe(false);
  });
});

describe('a fresh fill', () => {
  const settling = (phase: Phase, sdK?: number, site = makeSite('drain-valve')) =>
    settlingMs(given({ phase, site, state: sdK === undefined ? {} : learnt(sdK) }));

  it('circulates until its difference means something', () => {
    // 1.2 and 2 changes of 400 L at 20 L/min.
    expect([settling(going), settling(going, 0.501), settling(going, 0.5)]).toEqual([
      1_440_000, 1_440_000, 0,
    ]);
    expect([settling(going, 0.1, stops), settling(going, 0.1)]).toEqual([2_400_000, 0]);
    expect([
      settling({ ...going, afterFill: false } as Phase, 1, stops),
      settling(resting, 1, stops),
    ]).toEqual([0, 0]);
    expect(settling({ ...resting, afterFill: true } as Phase, 1, stops)).toBe(0);
  });
});

const timersOf = (situation: Situation) => updateTimers(situation, readHeat(situation));

describe('since when it is warm enough', () => {
  const timer = (name: keyof Timers, told: Told) => timersOf(given(told))[name];
  const held = since(7000);

  it.each<[string, Told, number | null]>([
    ['to fill', { phase: empty, told: { panSheetC: 30, storeBottomC: 20 } }, nowMs],
    ['to fill, at rest', { phase: resting, level: 'part', told: { panSheetC: 30, storeBottomC: 20 } }, nowMs],
    [
      'since before',
      { phase: empty, told: { panSheetC: 30, storeBottomC: 20 }, timers: { fillMs: held } },
      held,
    ],
    ['not just below', { phase: empty, told: { panSheetC: 29.999, storeBottomC: 20 } }, null],
    ['not without a store', { phase: empty, told: { panSheetC: 30 } }, null],
    ['not in a full pan', { phase: resting, level: 'full', told: { panSheetC: 30, storeBottomC: 20 } }, null],
    ['not by a doubtful reading', { phase: empty, told: { panSheetC: jumped(30), storeBottomC: 20 } }, null],
    [
      'still, by a doubtful reading',
      { phase: empty, told: { panSheetC: jumped(30), storeBottomC: 20 }, timers: { fillMs: held } },
      held,
    ],
  ])('%s', (_when, told, sinceMs) => {
    expect(timer('fillMs', told)).toBe(sinceMs);
  });

  const full: Told = { phase: resting, level: 'full', told: apart(6) };
  const batch = { settings: { ...quickSettings, batchRunning: 1, batchTemperatureC: 40 } };

  it.each<[string, Told, number | null]>([
    ['to start', {}, nowMs],
    ['since before', { timers: { startMs: held } }, held],
    ['not just below', { told: apart(5.999) }, null],
    ['not without a difference', { told: { panOutletC: 40 } }, null],
    ['not in a pan that is not full', { level: 'part' }, null],
    ['not while it circulates', { phase: going }, null],
    ['not by a doubtful reading', { told: { panOutletC: jumped(26), storeBottomC: 20 } }, null],
    [
      'still, by one',
      { told: { panOutletC: jumped(26), storeBottomC: 20 }, timers: { startMs: held } },
      held,
    ],
    ['not while a batch warms', batch, null],
    ['once a batch is warm', { ...batch, told: apart(20) }, nowMs],
  ])('to start: %s', (_when, told, sinceMs) => {
    expect(timer('startMs', { ...full, ...told })).toBe(sinceMs);
  });

  const closing: Told = { phase: going, level: 'full', told: apart(2) };
  const fresh = (ms: number): Told => ({
    phase: { name: 'circulating', sinceMs: since(ms), afterFill: true },
  });

  it.each<[string, Told, number | null]>([
    ['at the stop difference', {}, nowMs],
    ['since before', { timers: { stopMs: held } }, held],
    ['not just above', { told: apart(2.001) }, null],
    ['not without a difference', { told: { panOutletC: 10 } }, null],
    ['not at rest', { phase: resting }, null],
    ['not before a fill has settled', fresh(1_439_999), null],
    ['once a fill has settled', fresh(1_440_000), nowMs],
    ['where it cannot rest, by what the pair is known to', { site: stops, told: apart(1) }, nowMs],
    ['where it cannot rest, not above that', { site: stops, told: apart(1.001) }, null],
    ['where it cannot rest, by a better pair', { site: stops, told: apart(0.2), state: learnt(0.2) }, nowMs],
  ])('to stop: %s', (_when, told, sinceMs) => {
    expect(timer('stopMs', { ...closing, ...told })).toBe(sinceMs);
  });

  const powered = { ...initialState().outputs, pumpFraction: 1 };
  /** Pan and store apart by so much, under a flow of 10 L/min and a pump of 50 W. */
  const flowing = (differenceK: number, changes: Told = {}): Told => ({
    ...{ phase: going, level: 'full' },
    told: { ...apart(differenceK), flowLMin: 10, pumpPowerW: 50 },
    settings: { ...quickSettings, stopDifferenceK: 0.1 },
    ...changes,
  });
  const compared = { outputs: powered, ...learnt(0.01) };
  /** The difference at which 10 L/min bring three times those 50 W, less what the sensors may be wrong by. */
  const paysK = (150 - unsureW(given({ state: compared }))) / streamHeatW(10, 21, 20, 20);

  const little = 0.999 * paysK;

  it.each<[string, Told, number | null]>([
    ['once the heat is worth less than the electricity', flowing(little), nowMs],
    ['not while it is worth as much', flowing(1.001 * paysK), null],
    [
      'not where the flow is not measured',
      flowing(little, { told: { ...apart(little), pumpPowerW: 50 } }),
      null,
    ],
    ['not where the heat cannot be told', flowing(0, { told: { storeBottomC: 20, flowLMin: 10 } }), null],
    ['not while the pan is not known to be full', flowing(little, { level: 'unknown' }), null],
    ['not at rest', flowing(little, { phase: resting }), null],
    ['not where it cannot rest', flowing(little, { site: stops }), null],
  ])('to stop for its electricity: %s', (_when, told, sinceMs) => {
    expect(timer('stopMs', { ...told, state: compared })).toBe(sinceMs);
  });

  it('asks nothing of the heat of a pump that takes no power', () => {
    const still = given({ level: 'full' });
    const heat = { flowLMin: 0, estimated: false, errorFraction: null };
    expect([-1, 0].map((rateW) => isNotWorthPumping(still, { ...heat, rateW }))).toEqual([true, false]);
  });

  const quiet: Told = { phase: resting, level: 'full', told: { ...apart(1), ambientC: 5 } };
  const outputs = { ...initialState().outputs, pumpFraction: 1 };
  /** A loop in circulation, with a gain of so many times what is not told from nought. */
  const pumped = (times: number): Told => {
    const running: Told = { phase: going, state: { outputs } };
    return { ...running, harvest: { gainW: times * unsureW(given(running)) } };
  };
  const cold: Told = { sunHeightDeg: 0, told: { panOutletC: 21, storeBottomC: 20, ambientC: 20.9 } };

  it.each<[string, Told, number | null]>([
    ['when its gain is below nought', { harvest: { gainW: -0.001 } }, nowMs],
    ['since before', { harvest: { gainW: -5 }, timers: { losingMs: held } }, held],
    ['not at nought', { harvest: { gainW: 0 } }, null],
    ['not within what its sensors may be wrong by', pumped(-0.999), null],
    ['beyond that', pumped(-1.001), nowMs],
    ['not while nothing tells', {}, null],
    ['not in a pan that is not full', { level: 'part', harvest: { gainW: -5 } }, null],
    ['not before a fill has settled', { ...fresh(1_439_999), harvest: { gainW: -5 } }, null],
    ['once a fill has settled', { ...fresh(1_440_000), harvest: { gainW: -5 } }, nowMs],
    ['where no sky could warm it', cold, nowMs],
    ['not where a sky could', { ...cold, sunHeightDeg: 10 }, null],
    ['not while it is warm enough to start', { ...cold, told: { ...apart(6), ambientC: 5 } }, null],
    ['not in a pan that is not full, whatever the sky', { ...cold, level: 'part' }, null],
  ])('to lose: %s', (_when, told, sinceMs) => {
    expect(timer('losingMs', { ...quiet, ...told })).toBe(sinceMs);
  });

  it('has what the protections count beside it', () => {
    expect(timer('drainOpenMs', { phase: going, drainSays: true })).toBe(nowMs);
    expect(timer('drainOpenMs', { phase: going, drainSays: false })).toBeNull();
    expect(timer('noFlowMs', { phase: going, level: 'empty' })).toBe(since(5000));
    expect(timer('noFlowMs', { phase: resting, level: 'empty' })).toBeNull();
  });
});

describe('the start difference', () => {
  it('goes up by half a kelvin with each start of the day after the fifth', () => {
    const { meter } = initialState();
    const at = (starts: number) =>
      differencesOf(
        given({
          state: {
            meter: {
              ...meter,
              total: { ...meter.total, starts: starts + 9 },
              dayStart: { ...meter.dayStart, starts: 9 },
            },
          },
        }),
      );
    expect([0, 5, 6, 8].map((starts) => at(starts).startDifferenceK)).toEqual([6, 6, 6.5, 7.5]);
    expect(at(8).stopDifferenceK).toBe(2);
  });
});

describe('the last gain of a pan', () => {
  const before: GainMemory = { lowC: 20, sinceMs: 5 };
  const gain = (panOutletC: number | null, changes: Told = {}, memory: GainMemory | null = before) =>
    updateGain(
      given({
        phase: resting,
        level: 'full',
        told: panOutletC === null ? {} : { panOutletC },
        ...changes,
        state: { gain: memory },
      }),
    );

  it('is half a kelvin above its lowest', () => {
    expect(gain(20.5)).toEqual({ lowC: 20.5, sinceMs: nowMs });
    expect(gain(20.499)).toBe(before);
    expect(gain(20)).toBe(before);
    expect(gain(19.9)).toEqual({ lowC: 19.9, sinceMs: 5 });
  });

  it('is now while it circulates, and when it is first seen', () => {
    expect(gain(15, { phase: going })).toEqual({ lowC: 15, sinceMs: nowMs });
    expect(gain(15, {}, null)).toEqual({ lowC: 15, sinceMs: nowMs });
  });

  it.each<[string, number | null, Told]>([
    ['is not known', null, {}],
    ['is empty', 30, { level: 'empty' }],
    ['runs empty', 30, { phase: { name: 'emptying', sinceMs: 0 } as Phase }],
  ])('is none where the pan %s', (_what, panC, changes) => {
    expect(gain(panC, changes)).toBeNull();
  });
});
