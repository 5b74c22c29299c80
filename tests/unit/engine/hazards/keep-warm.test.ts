import { describe, expect, it } from 'vitest';
import { updateKeepWarm } from '../../../../controller/engine/hazards/keep-warm.ts';
import { type EngineState, initialState, unknownWater } from '../../../../controller/engine/state.ts';
import { makeSite } from '../rig.ts';
import { type Given, nowMs, situationOf, type Told } from '../situations.ts';

type Frost = EngineState['frost'];

const corner = makeSite('corner');
const measured: Frost = { ...initialState().frost, latched: 'frost-measured' };

function keeps(given: Given, changes: Partial<Frost> = {}): Frost {
  const frost = { ...measured, ...changes };
  return updateKeepWarm(situationOf({ ...given, state: { ...given.state, frost } }), frost);
}

const cold = (panOutletC: number, storeBottomC?: number): { told: Told } => ({
  told: { panOutletC, ...(storeBottomC !== undefined && { storeBottomC }) },
});

describe('a pan that cannot be emptied', () => {
  const held = (given: Given, changes: Partial<Frost> = {}) =>
    keeps({ site: corner, ...given }, changes).keepWarmMs;

  it.each<[string, Given, Partial<Frost>]>([
    ['at the frost temperature, from a store 2 K warmer', cold(4, 6.01), {}],
    ['from a store 1 K above the frost temperature', cold(2, 5.01), {}],
    ['from a store that cannot be read', cold(4), {}],
    ['full or not', { ...cold(4, 20), level: 'part' }, {}],
  ])('is kept warm %s', (_, given, changes) => {
    expect(held(given, changes)).toBe(nowMs);
  });

  it.each<[string, Given, Partial<Frost>]>([
    ['above the frost temperature', cold(4.01, 20), {}],
    ['from a store no more than 2 K warmer', cold(4, 6), {}],
    ['from a store at 1 K above the frost temperature', cold(2, 5), {}],
    ['while it is empty', { ...cold(4, 20), level: 'empty' }, {}],
    ['by another kind of frost', cold(4, 20), { latched: 'frost-trend' }],
    ['where it cannot be read', { told: { storeBottomC: 20 } }, {}],
  ])('is not kept warm %s', (_, given, changes) => {
    expect(held(given, changes)).toBeNull();
  });

  const going = { keepWarmMs: nowMs - 30_000 };

  it.each<[string, Given, Partial<Frost>]>([
    ['below the release', cold(6.99, 20), going],
    ['from a store 1 K warmer', cold(4, 5.01), going],
    ['from a store above the frost temperature', cold(2, 4.01), going],
    ['for the least time of the pump, though it is warm', cold(20, 20), { keepWarmMs: nowMs - 29_999 }],
  ])('is kept warm on %s', (_, given, changes) => {
    expect(held(given, changes)).toBe(changes.keepWarmMs);
  });

  it.each<[string, Given, Partial<Frost>]>([
    ['the release', cold(7, 20), going],
    ['a store no more than 1 K warmer', cold(4, 5), going],
    ['a store at the frost temperature, at once', cold(2, 4), { keepWarmMs: nowMs }],
    ['a pan that cannot be read', { told: { storeBottomC: 20 } }, going],
  ])('is no longer at %s', (_, given, changes) => {
    expect(held(given, changes)).toBeNull();
  });

  it('leaves its memory alone where nothing changed', () => {
    const frost = { ...measured, ...going };
    const situation = situationOf({ site: corner, ...cold(5, 20), state: { frost } });
    expect(updateKeepWarm(situation, frost)).toBe(frost);
    expect(keeps({ site: corner, ...cold(4, 20) })).toEqual({ ...measured, keepWarmMs: nowMs });
  });
});

describe('a pan that does not empty', () => {
  const water = { ...unknownWater, level: 'full', overdue: true, emptyingMs: 1 } as const;
  const stuck = (changes: Given = {}, waterChanges: object = {}) =>
    keeps({
      ...{ told: { panOutletC: 4, storeBottomC: 20, panLevelMm: 40 } },
      ...changes,
      state: { water: { ...water, ...waterChanges } },
    }).keepWarmMs;
  const unmeasured = cold(4, 20);

  it('is kept warm where its water is measured to stay', () => {
    expect(stuck()).toBe(nowMs);
    expect(stuck({ ...unmeasured, drainSays: false })).toBe(nowMs);
    expect(stuck({ told: { panOutletC: 4, storeBottomC: 8.01, panLevelMm: 40 } })).toBe(nowMs);
  });

  it.each<[string, Given, object]>([
    ['from a store no more than 4 K above the frost temperature', cold(4, 8), {}],
    ['from a store that cannot be read', { told: { panOutletC: 4, panLevelMm: 40 } }, {}],
    ['by its inlet alone', { told: { panInletC: 4, storeBottomC: 20, panLevelMm: 40 } }, {}],
    ['in its time', {}, { overdue: false }],
    ['when it is not full', {}, { level: 'part' }],
    ['while the drain is told to be open', { drainSays: true }, {}],
    ['before the drain had its chance', {}, { emptyingMs: 0 }],
    ['where nothing tells that the water stays', unmeasured, {}],
  ])('is not %s', (_, changes, waterChanges) => {
    const { told } = changes;
    const withLevel = told && changes !== unmeasured ? { told: { ...told, panLevelMm: 40 } } : {};
    expect(stuck({ ...changes, ...withLevel }, waterChanges)).toBeNull();
  });
});
