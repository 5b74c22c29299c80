import { describe, expect, it } from 'vitest';
import { airInTheSun, nightDewC } from '../../../../../controller/engine/sense/doubt/air.ts';
import { pairOffsetTooLarge, storeOrder } from '../../../../../controller/engine/sense/doubt/others.ts';
import { dewPointC } from '../../../../../controller/engine/sky.ts';
import { unwatched } from '../../../../../controller/engine/state.ts';
import type { Channel } from '../../../../../shared-types/channels.ts';
import { situationOf, type Told } from '../../situations.ts';

describe('the order of a store', () => {
  it.each<[Told, readonly Channel[] | null]>([
    [{}, null],
    [{ storeBottomC: 60 }, null],
    [{ storeBottomC: 22.5, storeTopC: 20 }, []],
    [{ storeBottomC: 22.501, storeTopC: 20 }, ['storeBottomC', 'storeTopC']],
    [{ storeMiddleC: 30, storeTopC: 20 }, ['storeMiddleC', 'storeTopC']],
    [{ storeBottomC: 40, storeMiddleC: 30, storeTopC: 31 }, ['storeBottomC']],
    [{ storeBottomC: 20, storeMiddleC: 30, storeTopC: 25 }, ['storeMiddleC', 'storeTopC']],
    [{ storeBottomC: 30, storeMiddleC: 31, storeTopC: 20 }, ['storeTopC']],
    [{ storeBottomC: 40, storeMiddleC: 30, storeTopC: 20 }, ['storeBottomC', 'storeMiddleC', 'storeTopC']],
  ])('%o: %j are wrong', (told, wrong) => {
    expect(storeOrder.judge(situationOf({ told }), null)).toEqual(wrong);
  });
});

describe('a pair of sensors', () => {
  const pair: Channel[] = ['panOutletC', 'storeBottomC'];
  it.each<[number | undefined, Told, readonly Channel[] | null]>([
    [undefined, { panOutletC: 20 }, null],
    [2, { panSheetC: 20 }, null],
    [1.999, { panOutletC: 20 }, []],
    [2, { panOutletC: 20 }, pair],
    [-1.999, { panOutletC: 20 }, []],
    [-2, { panOutletC: 20 }, pair],
  ])('that was learnt to be %s K apart, with %o: %j are wrong', (outletOffsetK, told, wrong) => {
    const learnt = outletOffsetK === undefined ? {} : { outletOffsetK };
    expect(pairOffsetTooLarge.judge(situationOf({ told, state: { learnt } }), null)).toEqual(wrong);
  });
});

describe('the air by its dew point', () => {
  const sunny = { ambientC: 30, humidityFraction: 0.5, irradianceWM2: 300 };
  const nowC = dewPointC(30, 0.5);
  const judge = (told: Told, beforeC: number | null = nowC - 7.001, darkMs: number | null = null) =>
    airInTheSun.judge(situationOf({ told, state: { watch: { ...unwatched, nightDewC: beforeC } } }), darkMs);

  it('is measured in the sun when it rose by more than 7 K', () => {
    expect([judge(sunny), judge(sunny, nowC - 6.999)]).toEqual([['ambientC'], []]);
    expect(judge({ ambientC: 20, humidityFraction: 1, irradianceWM2: 900 }, 13)).toEqual([]);
  });

  it.each<[string, Told, number | null, number | null]>([
    ['without the air', { ...sunny, ambientC: { quality: 'failed', cause: 'stale' } }, 0, null],
    ['without the humidity', { ambientC: 30, irradianceWM2: 900 }, 0, null],
    ['without the sun', { ambientC: 30, humidityFraction: 0.5 }, 0, null],
    ['in dim light', { ...sunny, irradianceWM2: 299.9 }, 0, null],
    ['in the dark', sunny, 0, 0],
    ['of a night that nobody saw', sunny, null, null],
    ['in air without any water', { ...sunny, humidityFraction: 0 }, -99, null],
    ['in air with less than none', { ...sunny, humidityFraction: -0.1 }, -99, null],
  ])('is not judged %s', (_when, told, beforeC, darkMs) => {
    expect(judge(told, beforeC, darkMs)).toBeNull();
  });

  it('has the dew point of now by night, and that of the night by day', () => {
    const situation = situationOf({ told: sunny, state: { watch: { ...unwatched, nightDewC: 3 } } });
    expect([nightDewC(situation, 5), nightDewC(situation, null)]).toEqual([nowC, 3]);
    const doubtful = { quality: 'doubtful', value: 30, ageMs: 0, cause: 'jumped' } as const;
    expect(nightDewC(situationOf({ told: { ...sunny, ambientC: doubtful } }), 5)).toBe(nowC);
    expect(
      nightDewC(situationOf({ told: { ...sunny, humidityFraction: { ...doubtful, value: 0.5 } } }), 5),
    ).toBeNull();
  });
});
