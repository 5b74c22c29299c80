import { describe, expect, it } from 'vitest';
import {
  blackBodyWM2,
  clearSkyEmissivity,
  cloudySkyEmissivity,
  dewPointC,
  humidityFraction,
  longWaveWM2,
  swinbankEmissivity,
  swinbankSkyK,
} from '../../sim/weather/sky.ts';

/** Half a unit of the last printed digit. */
const half = (digits: number) => 0.5 * 10 ** -digits + 1e-12;

describe('Berdahl & Martin 1984, values computed from the published equation by another program', () => {
  // Hour 6 and 1000 mbar leave the two corrections at nought.
  const rows = [
    [20, 10, 6, 1000, 0.7743],
    [20, 10, 0, 1013.25, 0.78889],
    [20, 10, 12, 1013.25, 0.76289],
    [30, 5, 2, 850, 0.73408],
  ] as const;
  it.each(rows)('air %d, dew point %d, hour %d, %d mbar', (_air, dew, hour, pressure, emissivity) => {
    expect(Math.abs(clearSkyEmissivity(dew, hour, pressure) - emissivity)).toBeLessThan(half(5));
  });

  it('gives the long-wave irradiance and the net loss of a black plate', () => {
    const mild = longWaveWM2(20, clearSkyEmissivity(10, 6, 1000), 0);
    expect(Math.abs(mild - 324.25)).toBeLessThan(half(3));
    expect(Math.abs(mild - blackBodyWM2(20) + 94.515)).toBeLessThan(half(3));
    const high = longWaveWM2(30, clearSkyEmissivity(5, 2, 850), 0);
    expect(Math.abs(high - blackBodyWM2(30) + 127.347)).toBeLessThan(half(3));
  });

  it('is closed by cloud, never beyond a black body', () => {
    const open = longWaveWM2(10, 0.75, 0);
    const shut = longWaveWM2(10, 0.75, 1);
    expect(shut).toBeGreaterThan(open);
    expect(shut).toBeLessThan(blackBodyWM2(10));
  });
});

describe('Swinbank 1963, values computed from the published equation by another program', () => {
  it.each([
    [20, 277.06],
    [15, 270.002],
  ])('air %d C: sky %d K', (air, sky) => {
    expect(Math.abs(swinbankSkyK(air) - sky)).toBeLessThan(half(3));
    const radiating = longWaveWM2(air, swinbankEmissivity(air), 0);
    expect(Math.abs(radiating - blackBodyWM2(sky - 273.15))).toBeLessThan(0.02);
  });
});

describe('sky of a weather file without long-wave irradiance (EnergyPlus documents)', () => {
  it('20 C, dew point 10 C, no cloud: 0.815, 340.6 W/m2', () => {
    const emissivity = cloudySkyEmissivity(10, 0);
    expect(Math.abs(emissivity - 0.815)).toBeLessThan(half(3));
    // The printed product has 293 K for the air, its rounded emissivity and the older 5.6697e-8 (0.012 % less).
    expect(Math.abs(longWaveWM2(19.85, 0.815, 0) - 340.6)).toBeLessThan(half(1) + 0.00012 * 340.6);
  });

  it('is closed by cloud, never beyond a black body', () => {
    expect(cloudySkyEmissivity(10, 1)).toBeGreaterThan(cloudySkyEmissivity(10, 0.5));
    expect(cloudySkyEmissivity(30, 1)).toBeLessThanOrEqual(1);
  });
});

describe('dew point, Magnus form of WMO-No. 8', () => {
  const rows = [
    [20, 0.5, 9.255],
    [25, 0.6, 16.693],
    [30, 0.3, 10.529],
  ] as const;
  it.each(rows)('%d C at %d', (air, humidity, dew) => {
    expect(Math.abs(dewPointC(air, humidity) - dew)).toBeLessThan(half(3));
    expect(Math.abs(humidityFraction(air, dewPointC(air, humidity)) - humidity)).toBeLessThan(1e-12);
  });
});

describe('black body', () => {
  it.each([
    [0, 315.658],
    [20, 418.766],
  ])('%d C', (temperature, radiation) => {
    expect(Math.abs(blackBodyWM2(temperature) - radiation)).toBeLessThan(half(3));
  });
});
