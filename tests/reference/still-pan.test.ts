import { describe, expect, it } from 'vitest';
import { advance } from '../../sim/plant/advance.ts';
import { createPlant } from '../../sim/plant/state.ts';
import { haurwitzWM2 } from '../../sim/weather/clear-sky.ts';
import type { Conditions } from '../../sim/weather/conditions.ts';
import { clearSkyEmissivity, humidityFraction, longWaveWM2 } from '../../sim/weather/sky.ts';
import { horizontalPosition } from '../../sim/weather/sun.ts';
import { createWeather } from '../../sim/weather/weather.ts';
import { resting } from '../support/plants.ts';
import { demoContent, siteOf } from '../support/sites.ts';

/**
 * Common practice, no published source: 70 litres at 4 cm of mean depth under a black sheet, no flow, a
 * clear day with a wind of 1 to 2 m/s. The collector's coefficients are the middles of ranges from memory
 * and were not touched for this check; air follows a cosine with its warmest at 15 h, dew points are of a
 * fair summer day.
 */
const still = siteOf(
  demoContent({
    pan: {
      grossAreaM2: 1.75,
      wettedAreaM2: 1.75,
      waterDepthM: 0.04,
      linerLimitC: 85,
      wallHeightM: 0.04,
      fallFraction: 0,
      heightAboveStoreM: 1.2,
    },
  }),
);

interface Day {
  readonly noonElevationDeg: number;
  readonly warmestC: number;
  readonly swingK: number;
  readonly dewC: number;
  readonly windMs: number;
}

const latitudeDeg = 48;

function conditions({ noonElevationDeg, warmestC, swingK, dewC, windMs }: Day, hour: number): Conditions {
  const declinationDeg = noonElevationDeg - 90 + latitudeDeg;
  const sun = horizontalPosition(latitudeDeg, declinationDeg, (hour - 12) * 15);
  const globalWM2 = haurwitzWM2(sun.zenithDeg);
  const airC = warmestC - swingK + swingK * Math.cos(((hour - 15) / 12) * Math.PI);
  return {
    atMs: hour * 3_600_000,
    solarHour: hour,
    sunZenithDeg: sun.zenithDeg,
    sunAzimuthDeg: sun.azimuthDeg,
    beamWM2: 0.85 * globalWM2,
    diffuseWM2: 0.15 * globalWM2,
    irradianceWM2: globalWM2,
    airC,
    humidityFraction: humidityFraction(airC, dewC),
    windMs,
    longWaveWM2: longWaveWM2(airC, clearSkyEmissivity(dewC, hour, 1005), 0),
    rainMmH: 0,
    snowMmH: 0,
  };
}

/** Highest temperature of the water in the middle of the pan, from a night in which it came to the air. */
function peakC(day: Day): number {
  const plant = createPlant(still, { waterC: 20, panC: day.warmestC - 2 * day.swingK, panFull: true });
  let peak = Number.NEGATIVE_INFINITY;
  for (let s = 3 * 3600; s < 20 * 3600; s += 10) {
    advance(plant, resting, conditions(day, s / 3600), 10);
    peak = Math.max(peak, plant.pan.core.waterC[4] ?? Number.NaN);
  }
  return peak;
}

const mild: Day = { noonElevationDeg: 59.5, warmestC: 26, swingK: 5, dewC: 13, windMs: 1.5 };
const hot: Day = { ...mild, noonElevationDeg: 63, warmestC: 31, dewC: 16 };

describe('a still pan of 70 litres on a clear day', () => {
  it('peaks at 58 C, plus or minus 4 K, under a sun just below 60 degrees and 26 C of air', () => {
    expect(Math.abs(peakC(mild) - 58)).toBeLessThan(4);
  });
  it('peaks at 65 C, plus or minus 4 K, under a sun a few degrees higher and 31 C of air', () => {
    expect(Math.abs(peakC(hot) - 65)).toBeLessThan(4);
  });
  it('differs between those days by 7 K, plus or minus 1.5 K', () => {
    expect(Math.abs(peakC(hot) - peakC(mild) - 7)).toBeLessThan(1.5);
  });
  it('is cooler by some kelvin when the wind is 4 m/s', () => {
    const lessK = peakC(mild) - peakC({ ...mild, windMs: 4 });
    expect(lessK).toBeGreaterThan(4);
    expect(lessK).toBeLessThan(15);
  });
});

const months = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
] as const;

describe('the same pan through the clear days of a mid-latitude year', () => {
  const place = { latitudeDeg, longitudeDeg: 0, elevationM: 100 };
  const weather = createWeather({ location: place, seed: 3, kinds: ['clear'] });
  /** Highest temperature of two days in the middle of a month. */
  const peakIn = (month: (typeof months)[number]): number => {
    const plant = createPlant(still, { waterC: 20, panC: 10, panFull: true });
    const fromMs = Date.UTC(2031, months.indexOf(month), 13);
    let peak = Number.NEGATIVE_INFINITY;
    for (let s = 0; s < 3 * 86_400; s += 10) {
      advance(plant, resting, weather.at(fromMs + s * 1000), 10);
      if (s > 86_400) peak = Math.max(peak, plant.pan.core.waterC[4] ?? Number.NaN);
    }
    return peak;
  };
  it.each(months.slice(3, 9))('gives 40 to 60 C in %s', (month) => {
    expect(peakIn(month)).toBeGreaterThan(40);
    expect(peakIn(month)).toBeLessThan(60);
  });
  it.each(['December', 'January'] as const)('gives little in %s', (month) => {
    expect(peakIn(month)).toBeLessThan(25);
  });
});
