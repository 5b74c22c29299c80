import { describe, expect, it } from 'vitest';
import { settingsRemarks } from '../../../controller/engine/remarks.ts';
import { dryStagnationC, wetStagnationC } from '../../../controller/engine/stagnation.ts';
import { defaultSettings, type Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { makeSite, type SiteKind } from './rig.ts';

/** A liner that stands all, differences that hold, and a store between scald and hygiene. */
const settings: Settings = {
  ...defaultSettings,
  startDifferenceK: 30,
  stopDifferenceK: 2,
  fillDifferenceK: 30,
};
const lined = (kind: SiteKind, linerLimitC = 110): Site => {
  const site = makeSite(kind);
  return { ...site, pan: { ...site.pan, linerLimitC } };
};
const site = lined('drain-valve');

const remarks = (ofSite: Site, changes: Partial<Settings> = {}, learnt = {}) =>
  settingsRemarks(ofSite, { ...settings, ...changes }, learnt);
const codes = (...told: Parameters<typeof remarks>) => remarks(...told).map(({ code }) => code);

describe('remarks', () => {
  it('are none where there is nothing to say', () => {
    expect(remarks(site)).toEqual([]);
  });

  it('tell of a liner that a dry sheet or still water is too hot for', () => {
    const dryC = dryStagnationC();
    const wetC = wetStagnationC(site);
    expect([codes(lined('drain-valve', dryC)), codes(lined('drain-valve', dryC - 0.01))]).toEqual([
      [],
      ['liner-not-for-dry-sheet'],
    ]);
    expect(codes(lined('drain-valve', wetC))).toEqual(['liner-not-for-dry-sheet']);
    expect(remarks(lined('drain-valve', 80))).toEqual([
      {
        code: 'liner-not-for-dry-sheet',
        values: { sheetC: dryC, linerLimitC: 80 },
        text: 'A dry sheet reaches 92 °C on a hot, still day; the liner stands 80 °C. The empty pan needs shade, or a liner that stands more.',
      },
      {
        code: 'liner-not-for-still-water',
        values: { sheetC: wetC, linerLimitC: 80 },
        text: 'A full, resting pan reaches 82 °C on a hot, still day; the liner stands 80 °C. The store has to take that heat, or the sheet needs shade.',
      },
    ]);
  });

  it('tell of a store that scalds, and of one that grows legionella', () => {
    expect(remarks(site, { storeLimitC: 61 })).toEqual([
      {
        code: 'store-scalds',
        values: { limitC: 61, scaldC: 60 },
        text: 'The store may come to 61 °C. Water of 60 °C burns the skin in some five seconds: a mixing valve has to stand between store and taps.',
      },
    ]);
    expect(codes(site, { storeLimitC: 60 })).toEqual([]);
    expect(remarks(site, { storeLimitC: 59 })).toEqual([
      {
        code: 'store-grows-legionella',
        values: { limitC: 59, storedAtC: 60 },
        text: 'The store stays below 60 °C, at 59 °C or less. Legionella may grow in it: heat what is drawn for showers and taps by an exchanger, or heat it further.',
      },
    ]);
  });

  it('tell of batches that cannot be, and of a pan for the warm season', () => {
    expect(remarks(lined('pump-stop'), { batchRunning: 1 })).toEqual([
      {
        code: 'no-batches-here',
        values: {},
        text: 'This pan empties as soon as the pump stops, so it cannot warm a batch at rest: the pump circulates instead.',
      },
    ]);
    expect([codes(lined('pump-stop')), codes(site, { batchRunning: 1 })]).toEqual([[], []]);
    expect(remarks(lined('corner'))).toEqual([
      {
        code: 'warm-season-only',
        values: {},
        text: 'This pan cannot be emptied by itself: it is for the warm season, and is emptied by hand before the first frost.',
      },
    ]);
  });

  it('tell of a pump that may cycle and of sensors that are too coarse', () => {
    const [cycling] = remarks(site, { startDifferenceK: 6 });
    expect(cycling).toEqual({
      code: 'pump-may-cycle',
      values: { startDifferenceK: 6, stopDifferenceK: 2, leastStartDifferenceK: 17.2 },
      text: 'With a stop difference of 2.0 K a pump that starts at 6.0 K may be stopped by its own cold water; from 17.2 K on it is not.',
    });
    expect(remarks(site, { stopDifferenceK: 1.5 })).toEqual([
      {
        code: 'sensors-too-coarse',
        values: { startDifferenceK: 30, stopDifferenceK: 2, sdK: 1 },
        text: 'The sensors of pan and store are known to within 1.00 K of each other, so the pump starts at 30.0 K and stops at 2.0 K.',
      },
    ]);
    expect(codes(site, { stopDifferenceK: 1.5 }, { outletOffsetK: 0, outletOffsetSdK: 0.2 })).toEqual([]);
  });
});
