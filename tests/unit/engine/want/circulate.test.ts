import { describe, expect, it } from 'vitest';
import type { Goal } from '../../../../controller/engine/situation.ts';
import type { Phase } from '../../../../controller/engine/state.ts';
import { want } from '../../../../controller/engine/want/want.ts';
import type { ReasonCode } from '../../../../shared-types/reasons.ts';
import { makeSite } from '../rig.ts';
import { given, resting, since, type Told, valuesOf, wanted, warm } from './wants.ts';

const cornered = makeSite('corner');
const stops = makeSite('pump-stop');
const stranger = { name: 'boiling', sinceMs: 0 } as unknown as Phase;

describe('what a pan wants while nothing can be decided', () => {
  it.each<[Phase['name']]>([['emptying'], ['stopped']])('%s: what it will wait for', (name) => {
    const phase = { name, sinceMs: 0 } as Phase;
    expect(wanted({ phase, told: warm })).toEqual(['rest', 'waiting-start-difference']);
    expect(valuesOf({ phase, told: warm })).toEqual({
      differenceK: 20,
      startDifferenceK: 6,
      stopDifferenceK: 2,
    });
  });

  it('goes on filling', () => {
    const told: Told = { phase: { name: 'filling', sinceMs: since(7000) }, told: warm };
    expect(wanted(told)).toEqual(['run', 'filling-for-heat']);
    expect(valuesOf(told)).toEqual({ filledS: 7, fillTimeS: 100 });
  });

  it('is emptied while a sensor is in doubt', () => {
    const panOutletC = { quality: 'doubtful', value: 40, ageMs: 0, cause: 'stuck' } as const;
    const told: Told = { phase: resting, told: { panOutletC, storeBottomC: 20 }, level: 'full' };
    expect(wanted(told)).toEqual(['empty', 'difference-doubted']);
    expect(valuesOf(told)).toEqual({ differenceK: 20 });
    expect(valuesOf({ ...told, told: { panOutletC } })).toEqual({});
  });

  it('is never made up for a phase that does not exist', () => {
    expect(() => want(given({ phase: stranger }))).toThrow('boiling');
  });
});

describe('a circulation', () => {
  const going: Told = {
    phase: { name: 'circulating', sinceMs: since(3_600_000), afterFill: true },
    level: 'full',
    told: { panOutletC: 27, storeBottomC: 20 },
  };
  const closed = { stopMs: since(20_000) };
  const losing = { losingMs: since(180_000) };
  /** No gap is worth waiting through. */
  const lost = { lostJ: 1e12 };

  it.each<[string, Told, Goal, ReasonCode]>([
    ['brings heat', {}, 'run', 'circulating-for-heat'],
    ['waits for the stop delay', { timers: { stopMs: since(19_999) } }, 'run', 'waiting-stop-delay'],
    ['ends in rest', { timers: closed }, 'rest', 'resting-no-gain'],
    ['ends in rest, though there is no gap', { timers: closed, harvest: lost }, 'rest', 'resting-no-gain'],
    ['goes on while it loses in a gap', { timers: losing }, 'run', 'circulating-for-heat'],
    ['is emptied when it loses for long', { timers: losing, harvest: lost }, 'empty', 'emptying-no-gain'],
    [
      'is believed to lose after three minutes',
      { timers: { losingMs: since(179_999) }, harvest: lost },
      'run',
      'circulating-for-heat',
    ],
    [
      'goes on where nothing empties it',
      { timers: losing, harvest: lost, site: cornered },
      'run',
      'circulating-for-heat',
    ],
    [
      'runs through a gap where it cannot rest',
      { timers: closed, site: stops },
      'run',
      'circulating-through-gap',
    ],
    [
      'runs through a loss where it cannot rest',
      { timers: losing, site: stops },
      'run',
      'circulating-through-gap',
    ],
    [
      'is emptied where it cannot rest',
      { timers: closed, site: stops, harvest: lost },
      'empty',
      'emptying-no-gain',
    ],
  ])('%s', (_what, told, goal, code) => {
    expect(wanted({ ...going, ...told })).toEqual([goal, code]);
  });

  it('comes with its numbers', () => {
    const values = { differenceK: 7, startDifferenceK: 6, stopDifferenceK: 2 };
    expect(valuesOf(going)).toEqual(values);
    expect(valuesOf({ ...going, timers: { stopMs: since(3000) } })).toEqual({
      ...values,
      heldS: 3,
      stopDelayS: 20,
    });
  });

  it('that takes heat out of the store ends within two minutes', () => {
    const slow = { ...given(going).settings, stopDelayS: 900 };
    const ends = (panOutletC: number, heldMs: number, settings = slow) =>
      wanted({
        ...going,
        told: { panOutletC, storeBottomC: 20 },
        timers: { stopMs: since(heldMs) },
        settings,
      })[1];
    expect([ends(18.999, 119_999), ends(18.999, 120_000)]).toEqual(['waiting-stop-delay', 'resting-no-gain']);
    expect([ends(19, 120_000), ends(19, 899_999), ends(19, 900_000)]).toEqual([
      'waiting-stop-delay',
      'waiting-stop-delay',
      'resting-no-gain',
    ]);
    expect([
      ends(10, 60_000, { ...slow, stopDelayS: 60 }),
      ends(10, 59_999, { ...slow, stopDelayS: 60 }),
    ]).toEqual(['resting-no-gain', 'waiting-stop-delay']);
    const unknown = { told: { storeBottomC: 20 }, settings: slow };
    expect(wanted({ ...going, ...unknown, timers: { stopMs: since(120_000) } })[1]).toBe(
      'waiting-stop-delay',
    );
  });

  it('runs for its settling time after a fill where it empties with the pump', () => {
    // Two changes of 400 L at 20 L/min.
    const then = (ms: number): Told => ({
      ...going,
      site: stops,
      phase: { name: 'circulating', sinceMs: since(ms), afterFill: true },
    });
    expect([wanted(then(2_399_999)), wanted(then(2_400_000))]).toEqual([
      ['run', 'circulating-least-on'],
      ['run', 'circulating-for-heat'],
    ]);
    expect(valuesOf(then(2_390_000))).toEqual({ leftS: 10 });
  });

  it('stops to warm a batch after a fill alone', () => {
    const settings = { ...given(going).settings, batchRunning: 1, batchTemperatureC: 40 };
    expect(wanted({ ...going, settings })).toEqual(['rest', 'warming-batch']);
    expect(valuesOf({ ...going, settings })).toEqual({ panC: 27, batchTemperatureC: 40 });
    const phase: Phase = { name: 'circulating', sinceMs: 0, afterFill: false };
    expect(wanted({ ...going, settings, phase })).toEqual(['run', 'circulating-for-heat']);
    expect(wanted({ ...going, settings, told: { panOutletC: 40, storeBottomC: 20 } })[1]).toBe(
      'circulating-for-heat',
    );
  });
});
