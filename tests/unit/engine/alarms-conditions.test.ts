import { describe, expect, it } from 'vitest';
import { type AlarmGround, conditions } from '../../../controller/engine/alarms/conditions.ts';
import { isRemembered, offDelayMs, repeatsOf } from '../../../controller/engine/alarms/repeats.ts';
import { initialState, safeOutputs } from '../../../controller/engine/state.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import { makeSite } from './rig.ts';
import { type Given, nowMs, situationOf, type Told } from './situations.ts';

const initial = initialState();
const warm: Told = { panOutletC: 30, storeBottomC: 20, ambientC: 15 };
const failed = { quality: 'failed', cause: 'stale' } as const;
const corner = makeSite('corner');
const frost = (latched: 'frost-measured' | null) => ({ frost: { ...initial.frost, latched } });
const upkeep = (changes: object) => ({ upkeep: { ...initial.upkeep, ...changes } });

interface Asked extends Given {
  readonly active?: boolean;
  readonly feedback?: AlarmGround['feedback'];
  readonly pumpFraction?: number;
}

function ask(code: AlarmCode, { active = false, feedback = null, pumpFraction = 0, ...given }: Asked = {}) {
  const situation = situationOf({ told: warm, ...given });
  const outputsBefore = { ...safeOutputs, pumpFraction };
  return conditions[code](situation, { situation, feedback, outputsBefore }, active);
}

describe('the condition of an alarm', () => {
  it.each(Object.keys(conditions) as AlarmCode[])('%s does not hold in a loop that is well', (code) => {
    expect(ask(code)).toBeNull();
  });

  it('of frost is water that cannot be let out', () => {
    const held: Asked = { site: corner, state: frost('frost-measured'), level: 'full' };
    expect(ask('frost-danger', held)).toEqual({ values: { panC: 30 } });
    expect(ask('frost-danger', { ...held, level: 'empty' })).toBeNull();
    expect(ask('frost-danger', { ...held, state: frost(null) })).toBeNull();
    expect(ask('frost-danger', { ...held, site: makeSite('drain-valve') })).toBeNull();
    const overdue = { ...initial.water, level: 'part', overdue: true } as const;
    expect(ask('frost-danger', { state: { ...frost('frost-measured'), water: overdue } })).not.toBeNull();
    expect(ask('frost-danger', { site: corner, told: {}, level: 'full' })).toEqual({ values: {} });
    expect(ask('not-emptying', { state: { water: overdue }, told: { panLevelMm: 9 } })).toEqual({
      values: { levelMm: 9 },
    });
  });

  it.each([
    ['pan-sensors-failed', { storeBottomC: 20 }],
    ['store-sensor-failed', { panOutletC: 30 }],
    ['all-sensors-silent', { panOutletC: failed, storeBottomC: failed }],
  ] as const)('%s needs no number', (code, told) => {
    expect(ask(code, { told })).toEqual({ values: {} });
  });

  it('of a failed sensor names those without an alarm of their own', () => {
    const names = (told: Told) => ask('sensor-failed', { told: { ...warm, ...told } });
    expect(names({ ambientC: failed, storeTopC: failed })).toMatchObject({ values: { sensors: 2 } });
    expect(names({ panSheetC: failed })).toEqual({ values: { sensors: 1 }, detail: 'Sheet' });
    expect(names({ panOutletC: failed, panSheetC: failed, ambientC: failed })).toEqual({
      ...{ values: { sensors: 1 }, detail: 'Air' },
    });
    expect(names({ storeBottomC: failed })).toBeNull();
  });

  it('of a doubtful sensor names those that did not fail altogether', () => {
    const doubt = { cause: 'stuck', by: 'itself', provenMs: 5 } as const;
    const watch = { ...initial.watch, doubts: { panSheetC: doubt, ambientC: doubt, storeTopC: doubt } };
    const told = { ...warm, panSheetC: 30, storeTopC: failed };
    expect(ask('sensor-doubtful', { told, state: { watch } as never })).toEqual({
      ...{ values: { sensors: 2 }, detail: 'Sheet, Air' },
    });
    expect(ask('sensor-doubtful', { told: {}, state: { watch } as never })).toBeNull();
  });

  it.each(['fill-failed', 'dry-running', 'no-flow', 'drain-stands-open', 'water-lost'] as const)(
    '%s is that failure, and no other',
    (cause) => {
      const state = { failure: { count: 1, cause } } as const;
      expect(ask(cause, { state })?.values).toEqual({ failures: 1 });
      const other = cause === 'no-flow' ? 'water-lost' : 'no-flow';
      expect(ask(cause, { state: { failure: { count: 1, cause: other } } })).toBeNull();
      expect(ask('fill-locked', { state })).toBeNull();
      expect(ask('fill-locked', { state: { failure: { count: 2, cause } } })?.values).toEqual({
        failures: 2,
      });
    },
  );

  it('of a pump without flow says why', () => {
    const state = { failure: { count: 1, cause: 'no-flow' }, flow: { ...initial.flow, kind: 2 } } as const;
    expect(ask('no-flow', { state })?.detail).toBe('the pump turns in air');
  });

  it.each([
    ['scald-caution', 'storeTopC', 60, 55],
    ['store-hot', 'storeTopC', 80, 79],
    ['liner-not-cooled', 'panOutletC', 80, 77],
  ] as const)('%s comes with %s at %d °C and is held down to %d', (code, channel, onC, downToC) => {
    const holds = (valueC: number, active: boolean) =>
      ask(code, { active, told: { ...warm, [channel]: valueC } }) !== null;
    expect([holds(onC, false), holds(onC - 0.1, false)]).toEqual([true, false]);
    expect([holds(downToC, true), holds(downToC - 0.1, true)]).toEqual([true, false]);
    expect(ask(code, { active: true, told: {} })).toBeNull();
  });

  it('of heat carries its numbers', () => {
    const hot = { ...warm, storeTopC: 81, panOutletC: 82 };
    expect(ask('scald-caution', { told: hot })).toEqual({ values: { storeC: 81 } });
    expect(ask('store-hot', { told: hot })).toEqual({ values: { storeC: 81, maximumC: 80 } });
    expect(ask('liner-not-cooled', { told: hot })).toEqual({ values: { panC: 82, linerLimitC: 80 } });
    const phase = { name: 'circulating', sinceMs: 0, afterFill: true } as const;
    expect(ask('liner-not-cooled', { told: hot, state: { phase } })).toBeNull();
    const state = { heat: { ...initial.heat, linerHot: true } };
    expect(ask('liner-hot', { told: hot, state })).toEqual({ values: { panC: 82, linerHotC: 72 } });
  });

  it('of the season says in how many days it comes, until it is there', () => {
    const site = makeSite('corner', undefined, { frostSeason: { from: '10-01', to: '03-31' } });
    const on = (localDay: string, level: 'full' | 'empty' = 'full') =>
      ask('frost-season-near', { site, localDay, level });
    expect(on('2031-09-03')).toEqual({ values: { days: 28 } });
    expect(on('2031-10-01')).toEqual({ values: {} });
    expect([on('2031-09-02'), on('2031-09-03', 'empty')]).toEqual([null, null]);
  });

  it('of upkeep carries what was found', () => {
    expect(ask('flow-low', { state: upkeep({ lowFlowLMin: 9 }) })?.values).toEqual({
      ...{ flowLMin: 9, fullFlowLMin: 20 },
    });
    expect(ask('poor-contact', { state: upkeep({ poorContactK: 3 }) })?.values).toEqual({ excessK: 3 });
    expect(ask('leak', { state: upkeep({ lackingMm: 30, lackingTimes: 2 }) })?.values).toEqual({
      lackingMm: 30,
    });
    expect(ask('leak', { state: upkeep({ lostMm: 3, lostMs: 7_200_000 }) })?.values).toEqual({
      rateMmH: 1.5,
    });
  });
});

describe('a device that does not do what it is told', () => {
  const says = (changes: object) => ({ pumpFraction: 0, drainOpen: true, ageMs: 0, ...changes });
  const told = (changes: object, asked: Asked = {}) =>
    ask('output-not-followed', { feedback: says(changes), ...asked });

  it.each([
    ['a pump that runs', { pumpFraction: 0.5 }, {}, 'pump'],
    ['a pump that stands', {}, { pumpFraction: 0.4 }, 'pump'],
    ['a drain that is shut', { drainOpen: false }, {}, 'drain valve'],
    ['both', { pumpFraction: 1, drainOpen: false }, {}, 'pump and drain valve'],
    ['just fresh', { pumpFraction: 1, ageMs: 60_000 }, {}, 'pump'],
    ['stale', { pumpFraction: 1, ageMs: 60_001 }, {}, undefined],
    ['another speed', { pumpFraction: 0.9 }, { pumpFraction: 0.4 }, undefined],
    ['no word of the drain', { drainOpen: null }, {}, undefined],
    ['no drain', { drainOpen: false }, { site: makeSite('pump-stop') }, undefined],
  ])('is told by %s', (_, changes, asked, detail) => {
    expect(told(changes, asked)?.detail).toBe(detail);
  });

  it('is told by a pump that runs on, whatever it says', () => {
    const state = { flow: { ...initial.flow, runsOnMs: nowMs - 20_000 } };
    const running = { values: { commandedFraction: 0 }, detail: 'pump' };
    expect(ask('output-not-followed', { state })).toEqual(running);
    expect(told({}, { state })?.values).toEqual({ commandedFraction: 0, pumpFraction: 0 });
  });
});

describe('an alarm that repeats itself', () => {
  const sixHoursMs = 21_600_000;
  const alarm = (returnedMs: number | null, repeats: number) => ({ returnedMs, repeats }) as never;

  it('does so within six hours of its return', () => {
    expect([isRemembered(0, sixHoursMs - 1), isRemembered(0, sixHoursMs), isRemembered(null, 5)]).toEqual([
      ...[true, false, false],
    ]);
    expect(repeatsOf(alarm(0, 3), sixHoursMs - 1)).toBe(4);
    expect(repeatsOf(alarm(0, 3), sixHoursMs)).toBe(0);
  });

  it('is held for ten minutes, then for an hour, never shorter than it is set', () => {
    expect([0, 1, 2, 3].map((repeats) => offDelayMs('frost-danger', repeats))).toEqual([
      ...[60_000, 600_000, 3_600_000, 3_600_000],
    ]);
    expect([0, 2].map((repeats) => offDelayMs('fill-locked', repeats))).toEqual([0, 0]);
  });
});
