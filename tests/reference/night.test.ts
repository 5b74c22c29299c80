import { describe, expect, it } from 'vitest';
import { restingPlateC } from '../../controller/engine/bare-plate.ts';
import { blackBodyWM2 } from '../../controller/engine/sky.ts';
import { plateConvectionWM2K } from '../../sim/physics/convection.ts';
import { createPlant } from '../../sim/plant/state.ts';
import type { Conditions } from '../../sim/weather/conditions.ts';
import { clearSkyEmissivity, longWaveWM2 } from '../../sim/weather/sky.ts';
import { dullNoon, live, resting } from '../support/plants.ts';
import { demoContent, siteOf } from '../support/sites.ts';

/** What the clear sky sends down at 2 in the morning [W/m2]. */
const clearWM2 = (airC: number, dewC: number) => longWaveWM2(airC, clearSkyEmissivity(dewC, 2, 1013.25), 0);

/**
 * Net radiative power of a black surface at air temperature on clear nights: 40 to 60 W/m2 in summer, 60
 * to 80 in autumn and winter. Published in the abstract of a study of radiating stores; air and dew point
 * here are of our choice, so it is a check of plausibility with 40 %.
 */
describe('a black surface at air temperature on a clear night', () => {
  const rows = [
    ['summer', 20, 17, 40, 60],
    ['autumn', 10, 6, 60, 80],
    ['winter', 2, -2, 60, 80],
  ] as const;
  it.each(rows)('radiates in %s at %d °C with a dew point of %d °C', (_, airC, dewC, fromWM2, toWM2) => {
    const netWM2 = blackBodyWM2(airC) - clearWM2(airC, dewC);
    expect(netWM2).toBeGreaterThan(0.6 * fromWM2);
    expect(netWM2).toBeLessThan(1.4 * toWM2);
  });
});

/**
 * A radiating store ended its clear nights 2 to 5 K below the air: published in the same abstract, a check of
 * plausibility with 40 %.
 */
describe('a full pan through a clear night', () => {
  it('ends 2 to 5 K below the air', () => {
    const plant = createPlant(siteOf(demoContent()), { waterC: 15, panC: 15, panFull: true });
    const night: Conditions = {
      ...dullNoon,
      solarHour: 0,
      sunZenithDeg: 120,
      beamWM2: 0,
      diffuseWM2: 0,
      irradianceWM2: 0,
      airC: 15,
      windMs: 1,
      longWaveWM2: clearWM2(15, 11),
    };
    live(plant, resting, 10 * 3600, night);
    const belowK = 15 - (plant.pan.core.waterC[4] ?? Number.NaN);
    expect(belowK).toBeGreaterThan(0.6 * 2);
    expect(belowK).toBeLessThan(1.4 * 5);
  });
});

/** Meteorologists in the press: frost lies with shelter air at 1.7 to 2.8 °C. */
describe('frost above freezing air', () => {
  it.each([1.7, 2.8])('covers a dry sheet in light wind at %d °C', (airC) => {
    const plateC = restingPlateC({
      absorbedWM2: 0,
      emissivity: 0.95,
      skyWM2: clearWM2(airC, airC - 2),
      convectionWM2K: plateConvectionWM2K.watmuff1977(1),
      airC,
    });
    expect(plateC).toBeLessThan(0);
    expect(plateC).toBeGreaterThan(airC - 12);
  });
});
