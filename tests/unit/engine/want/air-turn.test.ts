import { describe, expect, it } from 'vitest';
import { updateAir } from '../../../../controller/engine/want/air-turn.ts';
import { noHarvest, updateHarvest } from '../../../../controller/engine/want/outlook.ts';
import type { Told as Readings } from '../situations.ts';
import { given, type Harvest, type Told } from './wants.ts';

/** The air at a step that is as long as its mean remembers: the mean goes half the way to it. */
const air = (told: Readings, harvest: Partial<Harvest> = {}, changes: Told = {}) =>
  updateAir(given({ told, elapsedMs: 2_700_000, harvest: { airMeanC: 20, ...harvest }, ...changes }));

describe('the air', () => {
  it('has a mean over three quarters of an hour, begun anew after nothing told of it', () => {
    expect(air({ ambientC: 10 }, { airMeanC: null }).airMeanC).toBe(10);
    expect(air({ ambientC: 10 }).airMeanC).toBe(15);
    expect(air({}).airMeanC).toBeNull();
    const doubtful = { quality: 'doubtful', value: 10, ageMs: 0, cause: 'jumped' } as const;
    expect(air({ ambientC: doubtful }).airMeanC).toBeNull();
  });

  it('falls once it is three kelvins below its mean, from what the mean is then', () => {
    expect(air({ ambientC: 14 })).toEqual({ airMeanC: 17, airFellFromC: 17, airCameBack: false });
    expect(air({ ambientC: 14.001 }).airFellFromC).toBeNull();
    expect(air({ ambientC: 26 }).airFellFromC).toBeNull();
  });

  it('falls each night without a meaning', () => {
    const fellAt = (sunHeightDeg: number | null) => air({ ambientC: 10 }, {}, { sunHeightDeg }).airFellFromC;
    expect([0.01, 0, -5, null].map(fellAt)).toEqual([15, null, null, null]);
  });

  it('has come back when it is as warm as what it fell from, and is not forgotten for a fault of its sensor', () => {
    const fell = { airFellFromC: 21 };
    expect(air({ ambientC: 20.99 }, fell)).toMatchObject({ airFellFromC: 21, airCameBack: false });
    expect(air({ ambientC: 21 }, fell)).toMatchObject({ airFellFromC: null, airCameBack: true });
    const swings = { airCameBack: true };
    expect(air({ ambientC: 10 }, swings)).toMatchObject({ airFellFromC: 15, airCameBack: true });
    expect(air({ ambientC: 20 }, swings)).toMatchObject({ airFellFromC: null, airCameBack: true });
    expect(air({ ambientC: 10 }, { ...fell, ...swings })).toMatchObject({
      airFellFromC: 21,
      airCameBack: true,
    });
    const unread = { airMeanC: null, airFellFromC: null };
    expect(air({}, { ...fell, ...swings })).toEqual({ ...unread, airCameBack: true });
    expect(air({}, fell)).toEqual({ ...unread, airCameBack: false });
  });

  it('is remembered with the harvest, which begins without it', () => {
    const { airMeanC, airFellFromC, airCameBack } = noHarvest;
    expect([airMeanC, airFellFromC, airCameBack]).toEqual([null, null, false]);
    const told = { ambientC: 14 };
    const harvest = { airMeanC: 20 };
    expect(updateHarvest(given({ told, elapsedMs: 2_700_000, harvest }), null)).toMatchObject(air(told));
  });
});
