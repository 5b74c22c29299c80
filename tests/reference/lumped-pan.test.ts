import { describe, expect, it } from 'vitest';
import { lumpedPanC, stillPanC, timeConstantS } from '../../sim/physics/lumped-pan.ts';
import { partsOf } from '../../sim/plant/parts.ts';
import { usualTraits } from '../../sim/plant/traits.ts';
import { waterJKgK } from '../../sim/plant/water.ts';
import { demoContent, siteOf } from '../support/sites.ts';

/** Half a unit of the last printed digit. */
const half = (digits: number) => 0.5 * 10 ** -digits + 1e-12;

/** 40 mm of water [J/m2K]. The rows are computed by an independent program. */
const waterJM2K = 167_058.752;

describe('a pan of 40 mm that is one body', () => {
  it('comes from 20 to 33.30502 °C in an hour of 760 W/m2, on its way to 58.000 °C', () => {
    const pan = { gainWM2: 760, lossWM2K: 20, capacityJM2K: waterJM2K, airC: 20 };
    expect(Math.abs(stillPanC(pan) - 58)).toBeLessThan(half(3));
    expect(Math.abs(lumpedPanC(pan, 20, 3600) - 33.30502)).toBeLessThan(half(5));
  });
  it('falls from 40 to 20.21372 °C in two hours of night', () => {
    const pan = { gainWM2: 0, lossWM2K: 25, capacityJM2K: waterJM2K, airC: 10 };
    expect(Math.abs(lumpedPanC(pan, 40, 7200) - 20.21372)).toBeLessThan(half(5));
  });
  it('has a time constant of 2.3737 h under 1 mm of steel', () => {
    const capacityJM2K = waterJM2K + usualTraits.sheetJM2K;
    const seconds = timeConstantS({ gainWM2: 0, lossWM2K: 20, capacityJM2K, airC: 20 });
    expect(Math.abs(seconds / 3600 - 2.3737)).toBeLessThan(half(4));
  });
});

/** 998.2 kg/m3 and 4184 J/kgK: depth [mm], heat capacity [kJ/m2K]; computed. */
describe("the plant's pan", () => {
  const rows = [
    [20, 83.529],
    [40, 167.059],
    [50, 208.823],
  ] as const;
  it.each(rows)('holds at %d mm %d kJ/m2K', (depthMm, kJM2K) => {
    const pan = demoContent()['pan'] as object;
    const site = siteOf(demoContent({ pan: { ...pan, wettedAreaM2: 10, waterDepthM: depthMm / 1000 } }));
    const capacityJK = partsOf(site).pan.fullKg * waterJKgK;
    expect(Math.abs(capacityJK / site.pan.wettedAreaM2 / 1000 - kJM2K)).toBeLessThan(half(3));
  });
  it('lies under a sheet of 3.8465 kJ/m2K, 1 mm of steel', () => {
    expect(Math.abs(usualTraits.sheetJM2K / 1000 - 3.8465)).toBeLessThan(half(4));
  });
});
