import { describe, expect, it } from 'vitest';
import type { Goal } from '../../../../controller/engine/situation.ts';
import { fillCostJ, refillCostJ } from '../../../../controller/engine/want/refill.ts';
import type { ReasonCode } from '../../../../shared-types/reasons.ts';
import { makeSite } from '../rig.ts';
import { nowMs } from '../situations.ts';
import { given, type Harvest, resting, since, type Told, valuesOf, wanted } from './wants.ts';

const cornered = makeSite('corner');

describe('a pan at rest', () => {
  const hourMs = 3_600_000;
  const settings = { ...given({}).settings, emptyAfterMin: 90 };
  const still: Told = {
    phase: resting,
    level: 'full',
    told: { panOutletC: 22, storeBottomC: 20 },
    settings,
    state: { gain: { lowC: 22, sinceMs: nowMs } },
  };
  const idle = (min: number): Told => ({ state: { gain: { lowC: 22, sinceMs: since(min * 60_000) } } });
  const doubtful = {
    panOutletC: { quality: 'doubtful', value: 30, ageMs: 0, cause: 'jumped' },
    storeBottomC: 20,
  } as const;
  const losing = { losingMs: since(180_000) };
  const lost = { lostJ: 1e12 };
  const below = { panOutletC: 19.9, storeBottomC: 20 };

  it.each<[string, Told, Goal, ReasonCode]>([
    ['waits for the start difference', {}, 'rest', 'waiting-start-difference'],
    ['starts after the delay', { timers: { startMs: since(20_000) } }, 'run', 'circulating-for-heat'],
    ['waits for the delay', { timers: { startMs: since(19_999) } }, 'rest', 'waiting-start-delay'],
    [
      'does not start on doubt',
      { timers: { startMs: since(20_000) }, told: doubtful },
      'rest',
      'waiting-start-delay',
    ],
    ['waits through a gap', { timers: losing }, 'rest', 'resting-through-gap'],
    ['is emptied when no gap is worth it', { timers: losing, harvest: lost }, 'empty', 'emptying-no-gain'],
    [
      'loses for three minutes first',
      { timers: { losingMs: since(179_999) }, harvest: lost },
      'rest',
      'waiting-start-difference',
    ],
    [
      'cannot be emptied in a corner',
      { timers: losing, harvest: lost, site: cornered },
      'rest',
      'waiting-start-difference',
    ],
    ['still gains just before half the time', idle(44.99), 'rest', 'waiting-start-difference'],
    ['gains no more from half the time on', idle(45), 'rest', 'resting-no-gain'],
    ['rests until the time is up', idle(89.99), 'rest', 'resting-no-gain'],
    ['is emptied when the time is up', idle(90), 'empty', 'emptying-no-gain'],
    ['rests on in a corner', { ...idle(90), site: cornered }, 'rest', 'resting-no-gain'],
    [
      'rests on while it would cool the store',
      { ...idle(90), told: below },
      'rest',
      'resting-colder-than-store',
    ],
    [
      'is emptied when it is as warm as the store',
      { ...idle(90), told: { panOutletC: 20, storeBottomC: 20 } },
      'empty',
      'emptying-no-gain',
    ],
    [
      'rests on while it may warm',
      { ...idle(90), told: below, harvest: { gainW: 0 } },
      'rest',
      'resting-colder-than-store',
    ],
    [
      'is emptied while it loses',
      { ...idle(90), told: below, harvest: { gainW: -1 } },
      'empty',
      'emptying-no-gain',
    ],
    [
      'is emptied when nothing tells',
      { ...idle(90), told: { storeBottomC: 20 } },
      'empty',
      'emptying-no-gain',
    ],
    [
      'that never gained has idled for no time',
      { state: { gain: null } },
      'rest',
      'waiting-start-difference',
    ],
  ])('%s', (_what, told, goal, code) => {
    expect(wanted({ ...still, ...told })).toEqual([goal, code]);
  });

  it('warms a batch for half the time without gain', () => {
    const batch = { settings: { ...settings, batchRunning: 1, batchTemperatureC: 40 } };
    expect(wanted({ ...still, ...batch })).toEqual(['rest', 'warming-batch']);
    expect(wanted({ ...still, ...batch, ...idle(44.99) })[1]).toBe('warming-batch');
    expect(wanted({ ...still, ...batch, ...idle(45) })[1]).toBe('resting-no-gain');
  });

  it('comes with its numbers', () => {
    const values = { differenceK: 2, startDifferenceK: 6, stopDifferenceK: 2 };
    expect(valuesOf(still)).toEqual(values);
    expect(valuesOf({ ...still, ...idle(60) })).toEqual({ ...values, idleMin: 60, emptyAfterMin: 90 });
    expect(valuesOf({ ...still, timers: { startMs: since(3000) } })).toEqual({ heldS: 3, startDelayS: 20 });
  });

  it('waits through a gap for half of what a refill costs, then for more with each gap that ended', () => {
    const cost = refillCostJ(given(still));
    const waits = (harvest: Partial<Harvest>) =>
      wanted({ ...still, timers: losing, harvest })[1] === 'resting-through-gap';
    expect([waits({ lostJ: cost / 2 - 1 }), waits({ lostJ: cost / 2 })]).toEqual([true, false]);
    expect([waits({ lostJ: 0.75 * cost - 1, gaps: 1 }), waits({ lostJ: 0.75 * cost, gaps: 1 })]).toEqual([
      true,
      false,
    ]);
    expect([waits({ dayJ: cost }), waits({ dayJ: cost - 1 })]).toEqual([true, false]);
    const told = { ...still, timers: losing, harvest: { lostJ: 3600, dayJ: 3.6e9 } };
    expect(valuesOf(told)).toEqual({ lostKWh: 0.001, costKWh: cost / 3.6e6, dayKWh: 1000 });
    expect(valuesOf({ ...told, harvest: {} })).toEqual({ lostKWh: 0, costKWh: cost / 3.6e6 });
  });

  it('waits through no gap once the air is three kelvins below its mean', () => {
    const turned = (ambientC: number): Told => ({
      ...still,
      told: { panOutletC: 22, storeBottomC: 20, ambientC },
      timers: losing,
      harvest: { airMeanC: 20 },
    });
    expect([17.01, 17].map((airC) => wanted(turned(airC))[1])).toEqual([
      'resting-through-gap',
      'emptying-no-gain',
    ]);
    expect(valuesOf(turned(16.5))).toMatchObject({ airFellK: 3.5 });
    expect(wanted({ ...turned(17), harvest: { airMeanC: null } })[1]).toBe('resting-through-gap');
    expect(wanted({ ...turned(-10), harvest: { airMeanC: null } })[1]).toBe('resting-through-gap');
    const swings = { airMeanC: 20, airCameBack: true };
    expect(wanted({ ...turned(17), harvest: swings })[1]).toBe('resting-through-gap');
    const unread = { panOutletC: 22, storeBottomC: 20 };
    expect(wanted({ ...turned(17), told: unread })[1]).toBe('resting-through-gap');
    expect(Object.keys(valuesOf({ ...still, timers: losing, harvest: lost }))).not.toContain('airFellK');
  });

  it('puts nothing down to the air that it does for another reason', () => {
    const told = { panOutletC: 22, storeBottomC: 20, ambientC: 16 };
    const air = { airMeanC: 20 };
    for (const changes of [
      { ...idle(90), state: { ...idle(90).state, harvest: { ...given({}).state.harvest, ...air } } },
      { timers: losing, harvest: { ...air, ...lost } },
      { timers: losing, harvest: { ...air, dayJ: 1 } },
    ]) {
      const evening = { ...still, told, ...changes };
      expect(wanted(evening)).toEqual(['empty', 'emptying-no-gain']);
      expect(valuesOf(evening)).not.toHaveProperty('airFellK');
    }
  });

  it('costs more to refill with each fill of the day and with what the hour would bring', () => {
    const cost = (hourJ: number | null, fills = 0) =>
      refillCostJ(given({ ...still, harvest: { hourJ }, fills }));
    const fill = fillCostJ(given(still));
    expect([cost(null), cost(0)]).toEqual([fill, fill]);
    // A quarter of an hour and the fill delay of 30 s; half of 100 s and of 60 s.
    expect(cost(hourMs)).toBeCloseTo(fill + 1000 * (900 + 30 + 80), 6);
    expect(cost(null, 2)).toBeCloseTo(2 * fill, 6);
  });
});
