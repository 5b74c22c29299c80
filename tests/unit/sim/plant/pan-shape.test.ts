import { describe, expect, it } from 'vitest';
import { fillShapes, targetsInto } from '../../../../sim/plant/pan-shape.ts';

const cells = 8;
const targets = (shapes: number[], fraction: number) => {
  const into = Array.from({ length: cells }, () => 0);
  targetsInto(into, shapes, fraction * cells, 1);
  return into;
};

describe('water in a pan that is not full', () => {
  it('stands equally deep everywhere on a level floor', () => {
    const shapes = fillShapes(cells, 0.04, 0, false);
    for (const kg of targets(shapes, 0.37)) expect(kg).toBeCloseTo(0.37, 12);
  });

  it('gathers at the inlet of a pan that rises towards its outlet', () => {
    // 7 cm of fall under 4 cm of water: at a third of its filling the last third is dry.
    const third = targets(fillShapes(cells, 0.04, 0.07, false), 1 / 3);
    expect(third).toEqual([...third].sort((a, b) => b - a));
    expect(third[0]).toBeGreaterThan(0.8);
    expect(third.slice(5)).toEqual([0, 0, 0]);
  });

  it('gathers at both ends of a pan whose flow goes up and comes back', () => {
    const half = targets(fillShapes(cells, 0.04, 0.07, true), 0.4);
    expect(half[0]).toBeCloseTo(half[7] ?? Number.NaN, 12);
    expect(half[0]).toBeGreaterThan(0.7);
    expect(half[3]).toBe(0);
  });

  it.each([0, 0.004, 0.31, 0.5, 0.87, 0.999, 1])('holds exactly what it is given: %d', (fraction) => {
    for (const fallM of [0, 0.02, 0.3]) {
      const into = targets(fillShapes(cells, 0.04, fallM, false), fraction);
      expect(into.reduce((a, b) => a + b, 0)).toBeCloseTo(fraction * cells, 12);
      for (const kg of into) expect(kg).toBeLessThan(1.02);
      if (fraction === 1) for (const kg of into) expect(kg).toBeCloseTo(1, 9);
    }
  });
});
