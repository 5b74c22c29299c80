import { describe, expect, it } from 'vitest';
import { gainBounds } from '../../../../../controller/engine/sense/doubt/gain.ts';
import { gainInTheDark, inletSource, sourceOf } from '../../../../../controller/engine/sense/doubt/stream.ts';
import type { Situation } from '../../../../../controller/engine/situation.ts';
import type { Channel } from '../../../../../shared-types/channels.ts';
import { allSensors, makeSite } from '../../rig.ts';
import type { Told } from '../../situations.ts';
import { behindExchanger, flushedMs, hourMs, lasting, streaming } from './watched.ts';

const site = makeSite('drain-valve');
const metered = makeSite('drain-valve', allSensors);
const both: Channel[] = ['panInletC', 'storeBottomC'];
const dusk = 1_800_000;

describe('inlet and source of a stream', () => {
  const judge = (told: Told, given = {}, forMs = flushedMs, darkMs: number | null = null) =>
    inletSource.judge(streaming({ told, ...given }, forMs), darkMs);

  it.each<[number, readonly Channel[]]>([
    [22.5, []],
    [22.51, both],
    [17.5, []],
    [17.49, both],
  ])('%d °C beside 20 °C: %j are wrong', (panInletC, wrong) => {
    expect(judge({ panInletC, storeBottomC: 20 })).toEqual(wrong);
  });

  it.each<[string, Told, object, number]>([
    ['without an inlet', { storeBottomC: 20 }, {}, flushedMs],
    ['without a source', { panInletC: 30 }, {}, flushedMs],
    ['at rest', { panInletC: 30, storeBottomC: 20 }, { state: lasting('resting', flushedMs) }, flushedMs],
    ['before the pipe is flushed', { panInletC: 30, storeBottomC: 20 }, {}, 119_999],
    ['without flow', { panInletC: 30, storeBottomC: 20, flowLMin: 5.9 }, { site: metered }, flushedMs],
  ])('are not compared %s', (_when, told, given, forMs) => {
    expect(judge(told, given, forMs)).toBeNull();
  });

  it('are compared once the pipe is flushed', () => {
    expect(judge({ panInletC: 30, storeBottomC: 20 }, {}, 120_000)).toEqual(both);
  });

  it('are compared with the reservoir behind an exchanger', () => {
    expect(sourceOf({ site } as Situation)).toBe('storeBottomC');
    expect(sourceOf({ site: behindExchanger } as Situation)).toBe('reservoirC');
    expect(judge({ panInletC: 30, storeBottomC: 30, reservoirC: 20 }, { site: behindExchanger })).toEqual([
      'panInletC',
      'reservoirC',
    ]);
  });

  /** Water of 0 °C in air of 0 °C, so that the bounds are met to the last digit. */
  const { leastK, mostK } = gainBounds(streaming({ told: { ambientC: 0 } }), 0, false);

  it.each<[string, Told, readonly Channel[]]>([
    ['the most above the inlet', { panInletC: 0, storeBottomC: 10, panOutletC: mostK + 2 }, both],
    ['more above the inlet', { panInletC: 0, storeBottomC: 10, panOutletC: mostK + 2.001 }, ['panInletC']],
    ['more above the store', { panInletC: 10, storeBottomC: 0, panOutletC: mostK + 2.001 }, ['storeBottomC']],
    ['the least below the store', { panInletC: -3, storeBottomC: 0, panOutletC: leastK - 2 }, both],
    [
      'less below the store',
      { panInletC: -3, storeBottomC: 0, panOutletC: leastK - 2.001 },
      ['storeBottomC'],
    ],
    ['less below the inlet', { panInletC: 0, storeBottomC: -3, panOutletC: leastK - 2.001 }, ['panInletC']],
    ['more above both', { panInletC: 0, storeBottomC: 3, panOutletC: 40 }, both],
  ])('an outlet that stands %s', (_where, told, wrong) => {
    expect(judge({ ambientC: 0, ...told })).toEqual(wrong);
  });

  it('are both in doubt while the outlet tells nothing', () => {
    expect(judge({ panInletC: 30, storeBottomC: 3, ambientC: 0 })).toEqual(both);
    const told = { ambientC: 0, panInletC: 0, storeBottomC: 10, panOutletC: mostK + 3 };
    expect(judge(told, {}, flushedMs - 1)).toEqual(both);
    expect(judge(told, {}, flushedMs)).toEqual(['panInletC']);
  });

  it('have the sun for no excuse after half an hour of dark', () => {
    const told = { ambientC: 0, panInletC: 0, storeBottomC: 4, panOutletC: 4 };
    expect(judge(told, {}, flushedMs, dusk - 1)).toEqual(both);
    expect(judge(told, {}, flushedMs, dusk)).toEqual(['panInletC']);
    expect(judge(told)).toEqual(both);
  });
});

describe('a gain in the dark', () => {
  const judge = (told: Told, given = {}, forMs = flushedMs, darkMs: number | null = dusk) =>
    gainInTheDark.judge(streaming({ told: { ambientC: 0, ...told }, ...given }, forMs), darkMs);
  const gaining = { panOutletC: 30, storeBottomC: 20 };
  const pair: Channel[] = ['panOutletC', 'storeBottomC'];

  it('is believed up to 2 K in cold air', () => {
    expect([
      judge({ panOutletC: 22, storeBottomC: 20 }),
      judge({ panOutletC: 22.001, storeBottomC: 20 }),
    ]).toEqual([[], pair]);
    const { mostK } = gainBounds(streaming({ told: { ambientC: 10 } }), 0, true);
    expect(mostK).toBeGreaterThan(1);
    const warm = (aboveK: number) => judge({ ambientC: 10, storeBottomC: 0, panOutletC: mostK + 2 + aboveK });
    expect([warm(0), warm(0.001)]).toEqual([[], pair]);
  });

  it.each<[string, Told, object, number, number | null]>([
    ['by day', gaining, {}, flushedMs, null],
    ['at dusk', gaining, {}, flushedMs, dusk - 1],
    ['without a pan sensor', { storeBottomC: 20 }, {}, flushedMs, dusk],
    ['without a store', { panOutletC: 30 }, {}, flushedMs, dusk],
    ['before the pan is flushed', gaining, {}, flushedMs - 1, dusk],
    ['at rest', gaining, { state: lasting('resting', flushedMs) }, flushedMs, dusk],
    ['without flow', { ...gaining, flowLMin: 5.9 }, { site: metered }, flushedMs, dusk],
    ['early behind an exchanger', gaining, { site: behindExchanger }, 2 * hourMs - 1, dusk],
  ])('is not judged %s', (_when, told, given, forMs, darkMs) => {
    expect(judge(told, given, forMs, darkMs)).toBeNull();
  });

  it('is judged after two hours behind an exchanger', () => {
    expect(judge(gaining, { site: behindExchanger }, 2 * hourMs)).toEqual(pair);
  });

  it.each<[Told, readonly Channel[]]>([
    [{ ...gaining, panInletC: 28 }, ['storeBottomC']],
    [{ ...gaining, panInletC: 27.9 }, pair],
    [{ ...gaining, panInletC: 22 }, ['panOutletC']],
    [{ ...gaining, panInletC: 22.1 }, pair],
    [{ ...gaining, panInletC: 25, panSheetC: 30 }, ['storeBottomC']],
    [{ ...gaining, panInletC: 25, panSheetC: 20 }, ['panOutletC']],
    [{ ...gaining, panInletC: 20, panSheetC: 30 }, ['panOutletC']],
    // As near to the one as to the other.
    [{ panOutletC: 24, storeBottomC: 20, panInletC: 22 }, pair],
    [{ panOutletC: 24, storeBottomC: 20, panInletC: 22.001 }, ['storeBottomC']],
    [{ panOutletC: 24, storeBottomC: 20, panInletC: 21.999 }, ['panOutletC']],
    [{ panOutletC: 23, storeBottomC: 20, panInletC: 21.5 }, pair],
    // A sheet that stands in for the outlet is no witness of its own.
    [{ panSheetC: 30, storeBottomC: 20 }, ['panSheetC', 'storeBottomC']],
    [{ panSheetC: 30, storeBottomC: 20, panInletC: 20 }, ['panSheetC']],
    [{ panSheetC: 30, storeBottomC: 20, panInletC: 30 }, ['storeBottomC']],
  ])('of %o is the fault of %j', (told, wrong) => {
    expect(judge(told)).toEqual(wrong);
  });
});
