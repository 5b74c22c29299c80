import { describe, expect, it } from 'vitest';
import {
  isFrostBlind,
  isFrostMeasured,
  isFrostUnseen,
  updateFrost,
} from '../../../../controller/engine/hazards/frost.ts';
import { type EngineState, initialState } from '../../../../controller/engine/state.ts';
import { makeSite } from '../rig.ts';
import { type Given, nowMs, situationOf } from '../situations.ts';

type Frost = EngineState['frost'];

const calm = initialState().frost;
const jumped = (value: number) => ({ quality: 'doubtful', value, ageMs: 0, cause: 'jumped' }) as const;
const update = (frost: Partial<Frost>, given: Given = {}) =>
  updateFrost(situationOf({ ...given, state: { ...given.state, frost: { ...calm, ...frost } } }));
const pan = (panOutletC: number): Given => ({ told: { panOutletC } });

describe('frost', () => {
  it('is measured at the frost temperature, whatever was seen before', () => {
    expect([update({}, pan(4)).latched, update({}, pan(4.01)).latched]).toEqual(['frost-measured', null]);
    expect(update({ latched: 'frost-blind', warmMs: 5 }, pan(4))).toMatchObject({
      ...{ latched: 'frost-measured', warmMs: null },
    });
  });

  it('comes with a fall, and stays what it was where it was more', () => {
    const fall = { sinceMs: nowMs - 1000, fromC: 8, fallsKS: [0.05, 0.06, 0.07] };
    const resting = { phase: { name: 'resting', sinceMs: 0 } } as const;
    const given = { ...pan(7), state: resting, level: 'full' } as const;
    const falls = (latched: Frost['latched']) => update({ latched, fall, warmMs: 5 }, given);
    expect(falls(null)).toMatchObject({ latched: 'frost-trend', fall, warmMs: null });
    expect(falls('frost-measured').latched).toBe('frost-measured');
    expect(update({ fall }, { ...given, ...pan(7.1) }).latched).toBeNull();
  });

  it('is told by the air where the pan cannot be read', () => {
    const air = (ambientC: number): Given => ({ told: { ambientC } });
    expect([update({}, air(6)).latched, update({}, air(6.01)).latched]).toEqual(['frost-blind', null]);
    expect(update({}).latched).toBeNull();
    expect(update({}, { told: { ambientC: 0, panOutletC: 9 } }).latched).toBeNull();
  });

  it('leaves its memory alone where nothing changed', () => {
    const before = { ...calm, fall: { sinceMs: nowMs - 1000, fromC: 8, fallsKS: [] } };
    const state = { phase: { name: 'resting', sinceMs: 0 } } as const;
    const situation = situationOf({ ...pan(9), level: 'full', state: { ...state, frost: before } });
    expect(updateFrost(situation)).toBe(before);
  });

  it('keeps what else it sees', () => {
    const night = { sunHeightDeg: -5, told: { panOutletC: 9, ambientC: 3 } };
    expect(update({}, night).nightC).toBeLessThan(2);
    expect(update({}, { told: { panOutletC: 9, storeBottomC: 4 } }).storeCold).toBe(true);
    const resting = { phase: { name: 'resting', sinceMs: 0 } } as const;
    expect(update({}, { ...pan(9), level: 'full', state: resting }).fall).toEqual({
      ...{ sinceMs: nowMs, fromC: 9, fallsKS: [] },
    });
  });
});

describe('the release after frost', () => {
  const released = (frost: Partial<Frost>, given: Given = pan(7)) =>
    update({ latched: 'frost-measured', ...frost }, given);

  it('comes once the pan has held its temperature for its time', () => {
    expect(released({})).toMatchObject({ latched: 'frost-measured', warmMs: nowMs });
    expect(released({ warmMs: 5 }, pan(6.99))).toMatchObject({ latched: 'frost-measured', warmMs: null });
    const halfHourMs = 1_800_000;
    expect(released({ warmMs: nowMs - halfHourMs })).toMatchObject({ latched: null, warmMs: null });
    const early = nowMs - halfHourMs + 1;
    expect(released({ warmMs: early })).toMatchObject({ latched: 'frost-measured', warmMs: early });
  });

  it.each<[string, Given]>([
    ['a pan that cannot be read', {}],
    ['a doubtful pan', { told: { panOutletC: jumped(20) } }],
    ['a warm night', { sunHeightDeg: -5, told: { panOutletC: 20, ambientC: 30 } }],
    ['a night of frost ahead', { sunHeightDeg: null, told: { panOutletC: 20, ambientC: 3 } }],
  ])('does not come with %s', (_, given) => {
    expect(released({ warmMs: 0 }, given)).toMatchObject({ latched: 'frost-measured', warmMs: null });
  });

  it('comes where nothing tells day from night, if the air is warm', () => {
    const untold = { sunHeightDeg: null, told: { panOutletC: 20, ambientC: 30 } };
    expect(released({}, untold).warmMs).toBe(nowMs);
  });

  it('is not waited for where there was no frost', () => {
    expect(update({}, pan(20)).warmMs).toBeNull();
  });
});

describe('a store at frost', () => {
  const cold = (before: boolean, storeBottomC?: number) =>
    update({ storeCold: before }, { told: { panOutletC: 20, ...(storeBottomC && { storeBottomC }) } })
      .storeCold;

  it('is so from the frost temperature until it is 1 K above', () => {
    expect([cold(false, 4), cold(false, 4.01), cold(true, 5), cold(true, 5.01)]).toEqual([
      ...[true, false, true, false],
    ]);
  });

  it('stays what it was while it cannot be read', () => {
    expect([cold(true), cold(false)]).toEqual([true, false]);
  });
});

describe('frost as it is now', () => {
  const { facts, settings } = situationOf();
  const measured = { ...calm, latched: 'frost-measured' } as const;
  const blind = { ...calm, latched: 'frost-blind' } as const;

  it('is measured of a pan that can be read', () => {
    const at = (coldestPanC: number | null, frost: Frost = measured) =>
      isFrostMeasured(frost, { ...facts, coldestPanC }, settings);
    expect([at(5), at(5.01), at(null), at(5, blind)]).toEqual([true, false, false, false]);
  });

  it('is told by the air alone while the pan cannot be read', () => {
    const at = (coldestPanC: number | null, ambientC: number | null, frost: Frost = blind) =>
      isFrostBlind(frost, { ...facts, coldestPanC, ambientC }, settings);
    expect([at(null, 6), at(null, 6.01), at(null, null), at(1, 1), at(null, 6, measured)]).toEqual([
      ...[true, false, false, false, false],
    ]);
  });

  it('is unseen where neither can be read and the season does not exclude it', () => {
    const site = makeSite('drain-valve', undefined, { frostSeason: { from: '10-01', to: '03-31' } });
    const unseen = (coldestPanC: number | null, ambientC: number | null, day: string) =>
      isFrostUnseen({ ...facts, coldestPanC, ambientC }, site, day);
    expect(unseen(null, null, '2031-12-01')).toBe(true);
    expect(unseen(null, null, '2031-07-01')).toBe(false);
    expect([unseen(9, null, '2031-12-01'), unseen(null, 9, '2031-12-01')]).toEqual([false, false]);
  });
});
