import { describe, expect, it } from 'vitest';
import { panAtNight, sheetOutlet } from '../../../../../controller/engine/sense/doubt/pan.ts';
import type { Channel } from '../../../../../shared-types/channels.ts';
import { situationOf, type Told } from '../../situations.ts';
import { hourMs, lasting, streaming } from './watched.ts';

describe('an empty pan at night', () => {
  const settled = 2 * hourMs;
  const night = { state: lasting('empty', settled), level: 'empty' } as const;
  const judge = (told: Told, given = {}, darkMs: number | null = settled) =>
    panAtNight.judge(situationOf({ ...night, told: { ambientC: 15, ...told }, ...given }), darkMs);

  it.each<[string, Told, object, number | null]>([
    ['by day', { panOutletC: 30 }, {}, null],
    ['in the first two hours of dark', { panOutletC: 30 }, {}, settled - 1],
    ['without the air', { panOutletC: 30, ambientC: { quality: 'failed', cause: 'missing' } }, {}, settled],
    ['in another phase', { panOutletC: 30 }, { state: lasting('stopped', settled) }, settled],
    ['with water in it', { panOutletC: 30 }, { level: 'part' }, settled],
    ['in its first two hours', { panOutletC: 30 }, { state: lasting('empty', settled - 1) }, settled],
  ])('is not judged %s', (_when, told, given, darkMs) => {
    expect(judge(told, given, darkMs)).toBeNull();
  });

  it.each<[Told, readonly Channel[]]>([
    [{}, []],
    [{ panOutletC: 18, panSheetC: 1, panInletC: 15 }, []],
    [{ panOutletC: 18.001, panSheetC: 15 }, ['panOutletC']],
    [{ panOutletC: 15, panSheetC: 0.999 }, ['panSheetC']],
    [{ panOutletC: 15, panInletC: 19 }, ['panInletC']],
    // One alone does not outvote the air; two that agree do.
    [{ panOutletC: 30 }, ['panOutletC', 'ambientC']],
    [{ panOutletC: 30, panSheetC: 26 }, ['ambientC']],
    [{ panOutletC: 30, panSheetC: 25.999 }, ['panOutletC', 'panSheetC', 'ambientC']],
    [
      { panOutletC: 26, panSheetC: 28, panInletC: 30.001 },
      ['panOutletC', 'panSheetC', 'panInletC', 'ambientC'],
    ],
    // A store that is as cold as the air may be swapped with the warm one.
    [{ panOutletC: 30, panSheetC: 15, storeBottomC: 18 }, ['panOutletC', 'storeBottomC']],
    [{ panOutletC: 30, panSheetC: 15, storeBottomC: 18.001 }, ['panOutletC']],
  ])('beside air of 15 °C %o: %j are wrong', (told, wrong) => {
    expect(judge(told)).toEqual(wrong);
  });

  it('has no word in it of a sensor that is stuck', () => {
    const panOutletC = { quality: 'doubtful', value: 30, ageMs: 0, cause: 'stuck' } as const;
    expect(judge({ panOutletC, panSheetC: 15 })).toEqual([]);
    expect(judge({ panOutletC: { ...panOutletC, cause: 'noisy' }, panSheetC: 15 })).toEqual([]);
    expect(judge({ panOutletC: { ...panOutletC, cause: 'disagrees' }, panSheetC: 15 })).toEqual([
      'panOutletC',
    ]);
  });
});

describe('sheet and outlet of a full pan', () => {
  const oneWater = 900_000;
  const judge = (told: Told, given = {}, forMs = oneWater) =>
    sheetOutlet.judge(streaming({ told, ...given }, forMs), null);
  const apart = { panOutletC: 40, panSheetC: 20 };
  const both: Channel[] = ['panOutletC', 'panSheetC'];

  it.each<[string, Told, object, number]>([
    ['without an outlet', { panSheetC: 20 }, {}, oneWater],
    ['without a sheet', { panOutletC: 20 }, {}, oneWater],
    ['in a pan that is not full', apart, { level: 'part' }, oneWater],
    ['while it fills', apart, { state: lasting('filling', oneWater) }, oneWater],
    ['before the pan is one water', apart, {}, oneWater - 1],
  ])('are not compared %s', (_when, told, given, forMs) => {
    expect(judge(told, given, forMs)).toBeNull();
  });

  it('are compared in a stream and at rest', () => {
    expect([judge(apart), judge(apart, { state: lasting('resting', oneWater) })]).toEqual([both, both]);
  });

  it.each<[Told, readonly Channel[]]>([
    [{ panOutletC: 30, panSheetC: 22 }, []],
    [{ panOutletC: 30, panSheetC: 21.999 }, both],
    [{ panOutletC: 30, panSheetC: 45 }, []],
    [{ panOutletC: 30, panSheetC: 45.001 }, both],
    // The one that stands at 35 % of the other's way from the air, or less, has fallen off.
    [{ ambientC: 0, panOutletC: 20, panSheetC: 7 }, ['panSheetC']],
    [{ ambientC: 0, panOutletC: 20, panSheetC: 7.001 }, both],
    [{ ambientC: 0, panOutletC: 7, panSheetC: 40 }, ['panOutletC']],
    [{ ambientC: 0, panOutletC: 14.001, panSheetC: 40 }, both],
    [{ ambientC: 10, panOutletC: 30, panSheetC: 17 }, ['panSheetC']],
    [{ ambientC: 10, panOutletC: 30, panSheetC: 17.001 }, both],
    [{ ambientC: 60, panOutletC: 40, panSheetC: 56 }, ['panSheetC']],
    // A store that goes with the sheet is the water of the pan.
    [{ ...apart, storeBottomC: 24 }, ['panOutletC', 'storeBottomC']],
    [{ ...apart, storeBottomC: 24.001 }, both],
    [{ ...apart, storeBottomC: 16 }, ['panOutletC', 'storeBottomC']],
    [{ ...apart, storeBottomC: 15.999 }, both],
    [{ panOutletC: 20, panSheetC: 3 }, both],
  ])('%o: %j are wrong', (told, wrong) => {
    expect(judge(told)).toEqual(wrong);
  });
});
