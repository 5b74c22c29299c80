import { describe, expect, it } from 'vitest';
import { settingsRemarks } from '../../../controller/engine/index.ts';
import { pairOffset } from '../../../controller/engine/pair/uncertainty.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import { differencesFor, effectiveDifferences } from '../../../controller/engine/want/differences.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { commonSensors, makeSite } from './rig.ts';

const usual = { ...defaultSettings, startDifferenceK: 6, stopDifferenceK: 2 };
const small = { ...usual, startDifferenceK: 1, stopDifferenceK: 0.2 };
const site = makeSite('drain-valve', undefined, {
  pan: { grossAreaM2: 10.2, wettedAreaM2: 10, waterDepthM: 0.04, linerLimitC: 110 },
});

describe('the least differences', () => {
  it.each([
    [1, 2, 5],
    [0.5, 1, 2.5],
    [0.1, 0.2, 1],
    [0.2, 0.4, 1],
    [0.25, 0.5, 1.25],
  ])('follow from a standard deviation of %d K: stop %d K, start %d K', (sdK, stopK, startK) => {
    const { startDifferenceK, stopDifferenceK } = differencesFor(small, sdK);
    expect(stopDifferenceK).toBeCloseTo(stopK, 12);
    expect(startDifferenceK).toBeCloseTo(startK, 12);
  });

  it('leave settings alone that are wide enough, and each by itself', () => {
    expect(differencesFor(usual, 1)).toBe(usual);
    const wideStop = { ...small, startDifferenceK: 6, stopDifferenceK: 4 };
    expect(differencesFor(wideStop, 1)).toEqual({ startDifferenceK: 7, stopDifferenceK: 4 });
    const lowStop = { ...small, startDifferenceK: 6 };
    expect(differencesFor(lowStop, 1)).toEqual({ startDifferenceK: 6, stopDifferenceK: 2 });
  });

  it('take what was learnt of the outlet only where the outlet decides', () => {
    const learnt = { outletOffsetK: 0.4, outletOffsetSdK: 0.1 };
    const at = (panIsOutlet: boolean) =>
      effectiveDifferences({
        state: { learnt },
        facts: { panIsOutlet },
        site,
        settings: small,
      } as never as Situation);
    expect(at(true).stopDifferenceK).toBeCloseTo(0.2, 12);
    expect(at(false).stopDifferenceK).toBe(2);
  });

  it('need no pair that is safe on its own behind an exchanger whose outlet and inlet were compared', () => {
    const reservoir = makeSite('drain-valve', [...commonSensors, 'reservoirC'], { plumbing: 'reservoir' });
    const at = (learnt: object, plumbed = reservoir) =>
      effectiveDifferences({
        state: { learnt },
        facts: { panIsOutlet: true },
        site: plumbed,
        settings: small,
      } as never as Situation);
    expect(at({ endsOffsetK: 0.1 })).toEqual({ startDifferenceK: 2.5, stopDifferenceK: 1 });
    expect(at({})).toEqual({ startDifferenceK: 5, stopDifferenceK: 2 });
    expect(at({ endsOffsetK: 0.1 }, site)).toEqual({ startDifferenceK: 5, stopDifferenceK: 2 });
  });
});

describe('the offset of a pair', () => {
  it('is nought, give or take 1 K, until it was learnt, and never known worse than that', () => {
    expect(pairOffset({})).toEqual({ offsetK: 0, sdK: 1 });
    expect(pairOffset({ outletOffsetK: 0.5 })).toEqual({ offsetK: 0, sdK: 1 });
    expect(pairOffset({ outletOffsetSdK: 0.5 })).toEqual({ offsetK: 0, sdK: 1 });
    expect(pairOffset({ outletOffsetK: 0.5, outletOffsetSdK: 0.2 })).toEqual({ offsetK: 0.5, sdK: 0.2 });
    expect(pairOffset({ outletOffsetK: 0.5, outletOffsetSdK: 3 })).toEqual({ offsetK: 0.5, sdK: 1 });
  });
});

describe('remarks on settings', () => {
  const wide = { ...usual, startDifferenceK: 30, fillDifferenceK: 30 };

  it('are none where nothing is to be said', () => {
    expect(settingsRemarks(site, wide, {})).toEqual([]);
  });

  it('name the least start difference with which the pump does not cycle', () => {
    expect(settingsRemarks(site, usual, {})).toEqual([
      {
        code: 'pump-may-cycle',
        values: { startDifferenceK: 6, stopDifferenceK: 2, leastStartDifferenceK: 17.2 },
        text: 'With a stop difference of 2.0 K a pump that starts at 6.0 K may be stopped by its own cold water; from 17.2 K on it is not.',
      },
    ]);
  });

  it('say where the sensors are too coarse for the differences set', () => {
    const told = settingsRemarks(site, { ...wide, stopDifferenceK: 1.5 }, {});
    expect(told).toEqual([
      {
        code: 'sensors-too-coarse',
        values: { startDifferenceK: 30, stopDifferenceK: 2, sdK: 1 },
        text: 'The sensors of pan and store are known to within 1.00 K of each other, so the pump starts at 30.0 K and stops at 2.0 K.',
      },
    ]);
    const known = { outletOffsetK: 0, outletOffsetSdK: 0.2 };
    expect(settingsRemarks(site, { ...wide, stopDifferenceK: 1.5 }, known)).toEqual([]);
  });
});
