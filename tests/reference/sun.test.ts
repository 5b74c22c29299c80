import { getSpa } from 'nrel-spa';
import { describe, expect, it } from 'vitest';
import { horizontalPosition, sunCoordinates, sunPosition } from '../../sim/weather/sun.ts';

const radians = Math.PI / 180;

/** Twice the 0.01 deg that Michalsky 1988 states; parallax, which it leaves out, is up to 0.0024 deg. */
const toleranceDeg = 0.02;

describe('sun position', () => {
  // NREL/TP-560-34302 table A5.1; the other two from two independent programs that agree to 1e-6 deg.
  const rows = [
    [Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786, 820, 50.11162, 194.34024],
    [Date.UTC(2024, 2, 20, 17), -0.18, -78.47, 720, 5.296618, 85.575935],
    [Date.UTC(2023, 1, 13, 15, 30), 43.07, -89.4, 985, 67.382653, 136.875533],
  ] as const;
  it.each(rows)('at %d ms, latitude %d, longitude %d', (atMs, latitude, longitude, hPa, zenith, azimuth) => {
    const seen = sunPosition(atMs, latitude, longitude, hPa);
    expect(Math.abs(seen.zenithDeg - zenith)).toBeLessThan(toleranceDeg);
    // Close to the vertical an azimuth turns fast; what counts is the angle on the sky.
    expect(Math.abs(seen.azimuthDeg - azimuth) * Math.sin(zenith * radians)).toBeLessThan(toleranceDeg);
  });

  it('stays with the NREL algorithm through years, latitudes and hours', () => {
    for (let i = 0; i < 400; i++) {
      const atMs = Date.UTC(1990, 0, 1) + i * 3_456_789_000 * 0.53;
      const latitude = -66 + ((i * 37) % 133);
      const longitude = -180 + ((i * 101) % 361);
      const oracle = getSpa(new Date(atMs), latitude, longitude, 0, { pressure: 1013.25, temperature: 10 });
      if (oracle.zenith > 85) continue;
      const seen = sunPosition(atMs, latitude, longitude);
      expect(Math.abs(seen.zenithDeg - oracle.zenith)).toBeLessThan(toleranceDeg);
    }
  });
});

describe('Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed.', () => {
  it('example 1.5.1: 10:30 standard time at 89.4 W on 3 February is 10:19 solar time', () => {
    const { greenwichHourAngleDeg } = sunCoordinates(Date.UTC(2010, 1, 3, 16, 30));
    const solarMinutes = 720 + 4 * (greenwichHourAngleDeg - 89.4);
    // Printed to the minute.
    expect(Math.abs(solarMinutes - (10 * 60 + 19))).toBeLessThan(0.5);
  });

  // Declination and hour angle are the examples' own; azimuths are printed from south, west positive.
  // Rounding of the declination to 0.1 or 1 deg in the examples moves zenith and azimuth by 0.12 deg.
  const positions = [
    ['1.6.2a', 43, -14, -37.5, 66.5, 180 - 40.0],
    ['1.6.3', 43, -2.4, 60, 70.3, 180 + 66.8],
  ] as const;
  it.each(positions)('example %s', (_, latitude, declination, hourAngle, zenith, azimuth) => {
    const seen = horizontalPosition(latitude, declination, hourAngle);
    expect(Math.abs(seen.zenithDeg - zenith)).toBeLessThan(0.12);
    expect(Math.abs(seen.azimuthDeg - azimuth)).toBeLessThan(0.12);
  });
});
