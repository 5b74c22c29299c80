import { describe, expect, it } from 'vitest';
import { factsOf, good, usable } from '../../../../controller/engine/sense/facts.ts';
import type { Channel } from '../../../../shared-types/channels.ts';
import type { ReadingCause, TrustedReading } from '../../../../shared-types/readings.ts';

const doubtful = (value: number, cause: ReadingCause): TrustedReading => ({
  quality: 'doubtful',
  value,
  ageMs: 0,
  cause,
});
const failed = (cause: ReadingCause = 'open-circuit'): TrustedReading => ({ quality: 'failed', cause });
const jumped = (value: number) => doubtful(value, 'jumped');
const stuck = (value: number) => doubtful(value, 'stuck');
const sound = (value: number): TrustedReading => ({ quality: 'good', value, ageMs: 0 });

type Told = Partial<Record<Channel, TrustedReading | number>>;

function facts(told: Told, learnt = {}) {
  const readings = Object.entries(told).map(([channel, value]) => [
    channel,
    typeof value === 'number' ? sound(value) : value,
  ]);
  return factsOf(Object.fromEntries(readings), learnt);
}

describe('the value of a reading', () => {
  it.each([
    [undefined, null, null],
    [sound(7), 7, 7],
    [jumped(7), 7, null],
    [failed(), null, null],
  ])('%o: %s to tighten by, %s to relax by', (reading, toTighten, toRelax) => {
    expect([usable(reading), good(reading)]).toEqual([toTighten, toRelax]);
  });
});

describe('what the readings of the pan say together', () => {
  it.each<[Told, object]>([
    [{}, { panC: null, panIsOutlet: false, sheetC: null, hottestPanC: null, coldestPanC: null }],
    [{ panOutletC: 30 }, { panC: 30, panIsOutlet: true, sheetC: 30, hottestPanC: 30, coldestPanC: 30 }],
    [{ panSheetC: 31 }, { panC: 31, panIsOutlet: false, sheetC: 31, hottestPanC: 31, coldestPanC: 31 }],
    [{ panInletC: 29 }, { panC: null, panIsOutlet: false, sheetC: null, hottestPanC: 29, coldestPanC: 29 }],
    [{ panOutletC: -5 }, { hottestPanC: -5, coldestPanC: -5 }],
    [{ panInletC: -5 }, { hottestPanC: -5, coldestPanC: -5 }],
    [
      { panOutletC: 30, panSheetC: 33, panInletC: 20 },
      { panC: 30, panIsOutlet: true, sheetC: 33, hottestPanC: 33, coldestPanC: 20 },
    ],
    [
      { panOutletC: 30, panSheetC: 20, panInletC: 34 },
      { panC: 30, panIsOutlet: true, sheetC: 20, hottestPanC: 34, coldestPanC: 20 },
    ],
    [
      { panOutletC: failed(), panSheetC: 33 },
      { panC: 33, panIsOutlet: false, sheetC: 33 },
    ],
    [
      { panOutletC: 30, panSheetC: failed() },
      { panC: 30, panIsOutlet: true, sheetC: 30 },
    ],
    // One that is in doubt for longer is passed over where the other is free of it; both keep their order.
    [
      { panOutletC: stuck(30), panSheetC: 33 },
      { panC: 33, panIsOutlet: false, sheetC: 33 },
    ],
    [
      { panOutletC: 30, panSheetC: stuck(33) },
      { panC: 30, panIsOutlet: true, sheetC: 30 },
    ],
    [
      { panOutletC: stuck(30), panSheetC: stuck(33) },
      { panC: 30, panIsOutlet: true, sheetC: 33 },
    ],
    [{ panOutletC: stuck(30) }, { panC: 30, panIsOutlet: true, sheetC: 30 }],
    [{ panSheetC: stuck(33) }, { panC: 33, panIsOutlet: false, sheetC: 33 }],
    [
      { panOutletC: jumped(30), panSheetC: 33 },
      { panC: 30, panIsOutlet: true, sheetC: 33 },
    ],
  ])('%o: %o', (told, expected) => {
    expect(facts(told)).toMatchObject(expected);
  });

  it.each<[Told, boolean]>([
    [{}, false],
    [{ panOutletC: 30 }, true],
    [{ panSheetC: 30 }, true],
    [{ panInletC: 30 }, true],
    [{ panOutletC: 30, panSheetC: jumped(30) }, false],
    [{ panOutletC: 30, panInletC: jumped(30) }, false],
    [{ panOutletC: jumped(30), panSheetC: 30 }, false],
    [{ panOutletC: 30, panSheetC: stuck(30), panInletC: stuck(30) }, true],
    [{ panOutletC: stuck(30), panSheetC: 30 }, true],
    [{ panOutletC: stuck(30), panSheetC: stuck(30) }, false],
    [{ panOutletC: failed(), panSheetC: failed(), panInletC: 30 }, true],
  ])('%o: the pan is well known: %s', (told, isGood) => {
    expect(facts(told).panIsGood).toBe(isGood);
  });
});

describe('the difference of pan and store', () => {
  const learnt = { outletOffsetK: 0.5, outletOffsetSdK: 0.2 };

  it('is the outlet, else the sheet, above the store bottom', () => {
    const both = facts({ panOutletC: 30, panSheetC: 33, storeBottomC: 20 }, learnt);
    expect([both.differenceK, both.sheetDifferenceK]).toEqual([9.5, 13]);
    const one = facts({ panSheetC: 33, storeBottomC: 20 }, learnt);
    expect([one.differenceK, one.sheetDifferenceK]).toEqual([13, 13]);
  });

  it.each<[Told]>([
    [{ panOutletC: 30, panSheetC: 31 }],
    [{ storeBottomC: 30 }],
    [{ panInletC: 30, storeBottomC: 20 }],
  ])('is not known of %o', (told) => {
    const { differenceK, sheetDifferenceK } = facts(told);
    expect([differenceK, sheetDifferenceK]).toEqual([null, null]);
  });

  it.each<[Told, boolean, boolean]>([
    [{ panOutletC: 30, storeBottomC: 20 }, true, false],
    [{ panSheetC: 30, storeBottomC: 20 }, true, false],
    [{ panOutletC: 30 }, false, false],
    [{ storeBottomC: 20 }, false, false],
    [{ panOutletC: jumped(30), storeBottomC: 20 }, false, false],
    [{ panOutletC: 30, storeBottomC: jumped(20) }, false, false],
    [{ panOutletC: 30, panSheetC: jumped(30), storeBottomC: 20 }, false, false],
    [{ panOutletC: 30, panSheetC: stuck(30), storeBottomC: 20 }, true, false],
    [{ panOutletC: stuck(30), panSheetC: 30, storeBottomC: 20 }, true, false],
    [{ panOutletC: stuck(30), storeBottomC: 20 }, false, true],
    [{ panOutletC: 30, storeBottomC: stuck(20) }, false, true],
    [{ panOutletC: failed(), panSheetC: doubtful(30, 'noisy'), storeBottomC: 20 }, false, true],
  ])('%o: good to start by %s, doubted %s', (told, isGood, isDoubted) => {
    const { differenceIsGood, differenceIsDoubted } = facts(told);
    expect([differenceIsGood, differenceIsDoubted]).toEqual([isGood, isDoubted]);
  });
});

describe('what else the readings say', () => {
  it('is the warmest of the store, the air, the flow and a good level', () => {
    expect(
      facts({ storeBottomC: 20, storeMiddleC: 50, storeTopC: 40, ambientC: 12, flowLMin: 3, panLevelMm: 9 }),
    ).toMatchObject({ storeBottomC: 20, hottestStoreC: 50, ambientC: 12, flowLMin: 3, levelMm: 9 });
    expect(facts({ storeBottomC: 20, storeTopC: 40 })).toMatchObject({ hottestStoreC: 40 });
    expect(facts({ storeTopC: 40 })).toMatchObject({ hottestStoreC: 40, storeBottomC: null });
    expect(facts({ storeBottomC: 60, storeMiddleC: 50 })).toMatchObject({ hottestStoreC: 60 });
    expect(facts({ flowLMin: jumped(3), panLevelMm: jumped(9) })).toMatchObject({
      flowLMin: 3,
      levelMm: null,
    });
  });

  it.each<[Told, Channel[], boolean]>([
    [{}, [], true],
    [{ ambientC: 12, panOutletC: jumped(3) }, [], false],
    [{ ambientC: failed('missing'), panOutletC: failed('stale') }, ['ambientC', 'panOutletC'], true],
    [{ ambientC: failed('missing'), panOutletC: 20 }, ['ambientC'], false],
    [{ ambientC: failed('missing'), panOutletC: failed('out-of-range') }, ['ambientC', 'panOutletC'], false],
  ])('%o: %j have failed, and all are silent: %s', (told, channels, silent) => {
    expect(facts(told)).toMatchObject({ failed: channels, allSilent: silent });
  });
});
