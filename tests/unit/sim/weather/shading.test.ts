import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowShadedFraction, wallLitFraction } from '../../../../sim/weather/shading.ts';
import { beamRatio, diffuseOnPlaneWM2, planeOf, tiltedWM2 } from '../../../../sim/weather/tilt.ts';

const pan = { wallHeightM: 0.1, lengthM: 4, widthM: 2, azimuthDeg: 0 };
const sun = (sunZenithDeg: number, sunAzimuthDeg: number) => ({ sunZenithDeg, sunAzimuthDeg });
const zeniths = fc.integer({ min: 0, max: 899 }).map((tenths) => tenths / 10);
const azimuths = fc.integer({ min: 0, max: 3600 }).map((tenths) => tenths / 10);

describe('walls around a pan', () => {
  it.each([
    // At 45 deg a shadow is as long as its wall.
    ['sun along the length', sun(45, 0), 1 - 0.1 / 4],
    ['sun along the length from behind', sun(45, 180), 1 - 0.1 / 4],
    ['sun across', sun(45, 90), 1 - 0.1 / 2],
    ['sun over a corner', sun(45, 45), (1 - (0.1 * Math.SQRT1_2) / 4) * (1 - (0.1 * Math.SQRT1_2) / 2)],
    ['sun overhead', sun(0, 77), 1],
    ['sun so low that the shadow crosses the width', sun(87.2, 90), 0],
    ['sun on the horizon', sun(90, 90), 0],
    ['sun below it', sun(120, 90), 0],
  ])('%s', (_, where, lit) => {
    expect(wallLitFraction(where, pan)).toBeCloseTo(lit, 12);
  });

  it('turns with the pan', () => {
    const turned = { ...pan, azimuthDeg: 30 };
    expect(wallLitFraction(sun(70, 120), turned)).toBeCloseTo(wallLitFraction(sun(70, 90), pan), 12);
  });

  it('does nothing below the sheet', () => {
    expect(wallLitFraction(sun(80, 10), { ...pan, wallHeightM: -0.01 })).toBe(1);
  });

  it('matches a sheet of points each looked at from the sun', () => {
    fc.assert(
      fc.property(zeniths, azimuths, azimuths, (zenith, azimuth, panAzimuth) => {
        const here = { ...pan, azimuthDeg: panAzimuth };
        const turn = ((azimuth - panAzimuth) * Math.PI) / 180;
        const push = 0.1 * Math.tan((zenith * Math.PI) / 180);
        let lit = 0;
        for (let i = 0; i < 100; i++)
          for (let j = 0; j < 100; j++) {
            const x = ((i + 0.5) / 100) * 4 + push * Math.cos(turn);
            const y = ((j + 0.5) / 100) * 2 + push * Math.sin(turn);
            if (x > 0 && x < 4 && y > 0 && y < 2) lit++;
          }
        expect(Math.abs(wallLitFraction(sun(zenith, azimuth), here) - lit / 1e4)).toBeLessThan(0.011);
      }),
      { numRuns: 60 },
    );
  });
});

describe('rows behind one another', () => {
  it.each([
    // A row upright, 1 m high, 2 m behind the next: the sun 1 up on 2 along just clears the foot.
    ['upright, shadow to the foot', 90, 90 - 26.565051177, 1, 2, 0],
    ['upright, shadow to half the height', 90, 90 - 14.036243468, 1, 2, 0.5],
    ['30 deg rows without a gap, sun along their back', 30, 89.999, 1, Math.cos(Math.PI / 6), 1],
    ['30 deg, sun overhead', 30, 0, 1, 2, 0],
  ])('%s', (_, slope, zenith, slant, pitch, shaded) => {
    const seen = rowShadedFraction(sun(zenith, 180), planeOf(slope, 180), slant, pitch);
    expect(seen).toBeCloseTo(shaded, 4);
  });

  it('has no beam with the sun behind the row or down', () => {
    expect(rowShadedFraction(sun(80, 0), planeOf(30, 180), 1, 2)).toBe(1);
    expect(rowShadedFraction(sun(95, 180), planeOf(30, 180), 1, 2)).toBe(1);
  });

  it('shades less the wider the rows stand, and never out of 0 to 1', () => {
    fc.assert(
      fc.property(zeniths, azimuths, fc.integer({ min: 0, max: 90 }), (zenith, azimuth, slope) => {
        const plane = planeOf(slope, 180);
        const near = rowShadedFraction(sun(zenith, azimuth), plane, 1, 1);
        const far = rowShadedFraction(sun(zenith, azimuth), plane, 1, 3);
        expect(near).toBeGreaterThanOrEqual(far);
        expect(far).toBeGreaterThanOrEqual(0);
        expect(near).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('light on a tilted plane', () => {
  it('is that on the level when the plane is level', () => {
    fc.assert(
      fc.property(
        zeniths.filter((zenith) => zenith < 87),
        azimuths,
        (zenith, azimuth) => {
          const light = { ...sun(zenith, azimuth), beamWM2: 500, diffuseWM2: 120 };
          expect(tiltedWM2(light, planeOf(0, 33))).toBeCloseTo(620, 9);
        },
      ),
    );
  });

  it('stays sane with the sun on the horizon', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8700, max: 9000 }), azimuths, (hundredths, azimuth) => {
        const ratio = beamRatio(hundredths / 100, azimuth, planeOf(90, 180));
        expect(ratio).toBeGreaterThanOrEqual(0);
        expect(ratio).toBeLessThan(19.2);
      }),
    );
    expect(beamRatio(91, 180, planeOf(45, 180))).toBe(0);
  });

  it('sees half the sky and half the ground when upright', () => {
    expect(diffuseOnPlaneWM2(300, 100, planeOf(90, 0, 0.2))).toBeCloseTo(50 + 40, 9);
  });

  it('keeps the beam out of the shaded part', () => {
    const light = { ...sun(40, 180), beamWM2: 500, diffuseWM2: 0 };
    expect(tiltedWM2(light, planeOf(10, 180, 0), 0.25)).toBeCloseTo(
      0.25 * tiltedWM2(light, planeOf(10, 180, 0)),
      9,
    );
  });
});
