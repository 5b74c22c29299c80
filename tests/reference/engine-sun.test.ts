import { describe, expect, it } from 'vitest';
import { clearSkyWM2, sunHeightDeg } from '../../controller/engine/sun/position.ts';
import { sunPosition } from '../../sim/weather/sun.ts';

/** What the engine's short formula may be off by [deg]: its own statement. */
const mostDeg = 0.3;
const at = (utcMs: number, latitudeDeg: number, longitudeDeg: number) =>
  sunHeightDeg(utcMs, { latitudeDeg, longitudeDeg, elevationM: 0 });

describe('the height of the sun', () => {
  // Zenith of NREL/TP-560-34302 table A5.1, and two rows on which two independent programs agree.
  it.each([
    [Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786, 90 - 50.11162],
    [Date.UTC(2024, 2, 20, 17), -0.18, -78.47, 90 - 5.296618],
    [Date.UTC(2023, 1, 13, 15, 30), 43.07, -89.4, 90 - 67.382653],
  ])('%d ms, latitude %d, longitude %d: %d', (utcMs, latitude, longitude, height) => {
    expect(Math.abs(at(utcMs, latitude, longitude) - height)).toBeLessThan(mostDeg);
  });

  it('is within 0.3 deg of the solar position algorithm without refraction, all over the world and the year', () => {
    const air = { elevationM: 0, pressureHPa: 0, temperatureC: 15, deltaTS: 69.2 };
    for (let latitude = -66; latitude <= 66; latitude += 33)
      for (let hours = 0; hours < 365 * 24; hours += 173) {
        const utcMs = Date.UTC(2031, 0, 1) + hours * 3_600_000;
        const { zenithDeg } = sunPosition(utcMs, latitude, 20, air);
        expect(Math.abs(at(utcMs, latitude, 20) - (90 - zenithDeg))).toBeLessThan(mostDeg);
      }
  });

  // Equation 1.6.1b of Duffie & Beckman, computed apart from the engine; half a tenth is rounding.
  it.each([
    [0, -23.059],
    [30, -17.498],
    [45, -12.738],
    [75, -1.235],
    [135, 19.344],
    [150, 22.099],
    [225, 13.635],
    [270, -3.157],
    [315, -18.655],
    [345, -23.309],
  ])('at the pole is the declination by Spencer: %d deg into the year %d deg', (yearDeg, declinationDeg) => {
    const utcMs = (yearDeg / 360) * 365.2425 * 86_400_000;
    expect(Math.abs(at(utcMs, 90, 0) - declinationDeg)).toBeLessThan(0.0506);
  });

  it('comes in tenths of a degree', () => {
    const tenths = at(Date.UTC(2031, 3, 1, 9, 17), 44, -28) * 10;
    expect(Math.abs(tenths - Math.round(tenths))).toBeLessThan(1e-9);
  });
});

describe('Haurwitz clear sky with 1098 and 0.059 (Reno, Hansen & Stein, SAND2012-2389)', () => {
  // Digits of a public test of that form; rounded to 0.01 W/m2 here, so half of that is allowed.
  it.each([
    [5, 48.6298687941956],
    [30, 487.894132885425],
    [50, 778.766689344363],
    [60, 888.27],
    [90, 1035.0920325345],
  ])('height %d deg', (height, irradiance) => {
    expect(Math.abs(clearSkyWM2(height) - irradiance)).toBeLessThan(0.0051);
  });

  it('is dark with the sun at the horizon or below', () => {
    expect([0, -0.1, -30].map(clearSkyWM2)).toEqual([0, 0, 0]);
  });
});
