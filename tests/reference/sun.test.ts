import fc from 'fast-check';
import { getSpa } from 'nrel-spa';
import { describe, expect, it } from 'vitest';
import { horizontalPosition, sunPosition } from '../../sim/weather/sun.ts';
import { createSunTrack } from '../../sim/weather/sun-track.ts';
import { cosIncidence, planeOf } from '../../sim/weather/tilt.ts';

const radians = Math.PI / 180;
/** Half a unit of the last printed digit. */
const half = (digits: number) => 0.5 * 10 ** -digits + 1e-12;

describe('NREL/TP-560-34302 table A5.1', () => {
  // 17 October 2003, 12:30:30, 7 h behind. What the library keeps to itself is not checked: the Julian day,
  // heliocentric longitude, latitude and radius, right ascension and declination.
  const air = { elevationM: 1830.14, pressureHPa: 820, temperatureC: 11, deltaTS: 67 };
  const seen = sunPosition(Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786, air);

  it('zenith 50.11162, azimuth 194.34024', () => {
    expect(Math.abs(seen.zenithDeg - 50.11162)).toBeLessThan(half(5));
    expect(Math.abs(seen.azimuthDeg - 194.34024)).toBeLessThan(half(5));
  });

  it('incidence 25.18700 on a slope of 30 deg turned 10 deg from south to the east', () => {
    const cosine = cosIncidence(seen.zenithDeg, seen.azimuthDeg, planeOf(30, 170));
    expect(Math.abs(Math.acos(cosine) / radians - 25.187)).toBeLessThan(half(5));
  });

  it('the library: sunrise 6:12:43, transit 11:46:05, sunset 17:20:19', () => {
    // Here the date's UTC fields are the local clock, as the library wants them with a zone.
    const day = getSpa(new Date(Date.UTC(2003, 9, 17, 12, 30, 30)), 39.742476, -105.1786, -7, {
      elevation: 1830.14,
      pressure: 820,
      temperature: 11,
      delta_t: 67,
    });
    const printed = [6 + 12 / 60 + 43 / 3600, 11 + 46 / 60 + 5 / 3600, 17 + 20 / 60 + 19 / 3600];
    [day.sunrise, day.solarNoon, day.sunset].forEach((hour, i) => {
      // Printed to the second, cut off: up to one second more.
      expect(Math.abs(hour - (printed[i] ?? 0)) * 3600).toBeLessThan(1);
    });
  });
});

describe('sun position, two independent programs that agree to 1e-6 deg', () => {
  const rows = [
    [Date.UTC(2024, 2, 20, 17), -0.18, -78.47, 2850, 720, 15, 5.296618, 85.575935],
    [Date.UTC(2023, 1, 13, 15, 30), 43.07, -89.4, 270, 985, -5, 67.382653, 136.875533],
  ] as const;
  it.each(rows)(
    '%d ms, latitude %d, longitude %d',
    (atMs, latitude, longitude, elevationM, pressureHPa, ...rest) => {
      const [temperatureC, zenith, azimuth] = rest;
      const air = { elevationM, pressureHPa, temperatureC, deltaTS: 69.2 };
      const seen = sunPosition(atMs, latitude, longitude, air);
      // Their own agreement, with a unit of the last digit on top.
      expect(Math.abs(seen.zenithDeg - zenith)).toBeLessThan(2e-6);
      expect(Math.abs(seen.azimuthDeg - azimuth)).toBeLessThan(2e-6);
    },
  );

  it('moves on within a second', () => {
    const [before, between, after] = [0, 500, 1000].map(
      (ms) => sunPosition(Date.UTC(2024, 5, 1, 9) + ms, 40, 10).zenithDeg,
    ) as [number, number, number];
    expect(Math.abs(between - (before + after) / 2)).toBeLessThan(1e-6);
    expect(before - after).toBeGreaterThan(1e-3);
  });
});

describe('the fast track of the sun', () => {
  it('stays within 1e-4 deg of the exact position at any instant and place, poles and tropics included', () => {
    const places = fc.oneof(
      fc.constantFrom(-90, -89.999, -23.44, 0, 23.44, 89.999, 90),
      fc.integer({ min: -90_000, max: 90_000 }).map((milli) => milli / 1000),
    );
    const longitudes = fc.integer({ min: -180_000, max: 180_000 }).map((milli) => milli / 1000);
    const instants = fc.integer({ min: 0, max: 4_102_444_800 }).map((s) => s * 1000 + 137);
    fc.assert(
      fc.property(places, longitudes, instants, (latitude, longitude, atMs) => {
        const exact = sunPosition(atMs, latitude, longitude);
        const fast = createSunTrack(latitude, longitude)(atMs);
        // There the refraction starts with a jump, in the published algorithm as well.
        fc.pre(Math.abs(exact.zenithDeg - 90.8334) > 0.001 && Math.abs(exact.zenithDeg - 90.2) > 0.3);
        expect(Math.abs(fast.zenithDeg - exact.zenithDeg)).toBeLessThan(1e-4);
        const turn = Math.abs(fast.azimuthDeg - exact.azimuthDeg);
        // Close to the vertical an azimuth turns fast; what counts is the angle on the sky.
        const acrossDeg = Math.min(turn, 360 - turn) * Math.sin(exact.zenithDeg * radians);
        expect(acrossDeg).toBeLessThan(1e-4);
      }),
      { numRuns: 2000 },
    );
  });

  it('does not depend on what was asked before', () => {
    const wandering = createSunTrack(44, -28);
    const noonMs = Date.UTC(2031, 5, 21, 13, 52, 3);
    for (const offset of [5e9, -3_600_000, 3_600_000, 1, 7e10]) wandering(noonMs + offset);
    expect(wandering(noonMs)).toEqual(createSunTrack(44, -28)(noonMs));
  });
});

describe('Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed.', () => {
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
