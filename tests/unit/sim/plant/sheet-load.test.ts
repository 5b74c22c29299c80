import { describe, expect, it } from 'vitest';
import { netIrradianceWM2, opticalFraction, sheetLossWM2K } from '../../../../sim/physics/collector.ts';
import { impairmentsOf } from '../../../../sim/plant/impairments.ts';
import { sheetLoadOf } from '../../../../sim/plant/sheet-load.ts';
import { sheetSunWM2 } from '../../../../sim/plant/sheet-sun.ts';
import { createPlant } from '../../../../sim/plant/state.ts';
import { dullNoon } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const site = siteOf(demoContent());
const healthy = impairmentsOf([]);

interface Case {
  readonly windMs?: number;
  readonly opticalEfficiency?: number;
}

/** What the sheet gathers of all that falls on it, and what its coefficients promise. */
function fractionsOf({ windMs = 0, opticalEfficiency = 0.905 }: Case) {
  const state = createPlant(site, { traits: { opticalEfficiency }, waterC: 20, panC: 20 });
  const { collector, traits } = state.parts;
  const weather = { ...dullNoon, windMs };
  const { gainWM2 } = sheetLoadOf(state, weather, healthy, 1);
  const onSheet = { ...weather, irradianceWM2: sheetSunWM2(weather, state.parts) };
  const netWM2 = netIrradianceWM2(onSheet, collector);
  const lossWM2K = sheetLossWM2K(windMs, collector);
  return {
    gathered: gainWM2 / netWM2,
    promised: opticalFraction(windMs, collector) / (1 - lossWM2K / traits.contactWM2K),
  };
}

describe('what a sheet gathers', () => {
  it.each([0, 2, 4, 8])('is what its coefficients promise in a wind of %d m/s', (windMs) => {
    const { gathered, promised } = fractionsOf({ windMs });
    expect(gathered).toBeCloseTo(promised, 12);
  });

  it('is at most all that falls on it', () => {
    const { gathered, promised } = fractionsOf({ opticalEfficiency: 1 });
    expect(promised).toBeGreaterThan(1.04);
    expect(gathered).toBeCloseTo(1, 12);
  });

  it('falls short of the promised by 0.01 in the middle of the corner', () => {
    // Without wind, 11.5 of the 250 W/m2K of the contact are lost.
    const { gathered, promised } = fractionsOf({ opticalEfficiency: 1 - 11.5 / 250 });
    expect(promised).toBeCloseTo(1, 12);
    expect(gathered).toBeCloseTo(0.99, 12);
  });

  it('rises through the corner without a kink', () => {
    const step = 0.001;
    const rises = Array.from({ length: 120 }, (_, i) => {
      const at = (opticalEfficiency: number) => fractionsOf({ opticalEfficiency });
      const [before, after] = [at(0.88 + i * step), at(0.88 + (i + 1) * step)];
      return (after.gathered - before.gathered) / (after.promised - before.promised);
    });
    expect(rises[0]).toBeCloseTo(1, 9);
    expect(rises.at(-1)).toBeCloseTo(0, 9);
    for (const [i, rise] of rises.entries()) {
      expect(rise).toBeLessThanOrEqual((rises[i - 1] ?? 1) + 1e-9);
      // Over 0.08 the slope falls from 1 to 0.
      expect((rises[i - 1] ?? 1) - rise).toBeLessThan(0.014);
    }
  });
});
