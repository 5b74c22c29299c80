import { describe, expect, it } from 'vitest';
import { type BarePlate, restingPlateC } from '../../controller/engine/bare-plate.ts';
import { blackBodyWM2 } from '../../controller/engine/sky.ts';

const half = 5e-4;

/** Sun, emissivity, convection [W/m2K], air [°C], sky [°C], plate [°C]; computed by an independent program. */
describe('stagnation of a dry sheet', () => {
  const rows = [
    [950, 0.95, 5.8, 30, 15, 92.251],
    [720, 0.9, 10, 25, 10, 63.924],
  ] as const;
  it.each(rows)('that takes up %d W/m2', (absorbedWM2, emissivity, convectionWM2K, airC, skyC, plateC) => {
    const plate: BarePlate = {
      absorbedWM2,
      emissivity,
      convectionWM2K,
      airC,
      skyWM2: blackBodyWM2(skyC),
    };
    expect(Math.abs(restingPlateC(plate) - plateC)).toBeLessThan(half);
  });
});

/** Convection [W/m2K], air [°C], sky [°C], plate [°C]; emissivity 0.95; computed by an independent program. */
describe('a dry sheet at night', () => {
  const rows = [
    [2.8, 5, -15, -6.631],
    [5.8, 2, -18, -5.967],
  ] as const;
  it.each(rows)('in still to light wind of %d W/m2K and %d °C', (convectionWM2K, airC, skyC, plateC) => {
    const plate = { absorbedWM2: 0, emissivity: 0.95, convectionWM2K, airC, skyWM2: blackBodyWM2(skyC) };
    expect(Math.abs(restingPlateC(plate) - plateC)).toBeLessThan(half);
  });
});
