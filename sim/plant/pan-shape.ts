import { at, columnOf } from './water.ts';

/** Steps of filling for which the shape of the water is kept. */
const steps = 64;
const slicesPerCell = 8;

/**
 * How full each cell of a pan is, for every 64th of the whole pan's filling.
 *
 * The sheet lies parallel to the floor, so a full pan is everywhere as deep. What is less than full gathers
 * at the low end under a level surface. A pan with its outlet high rises all along its flow; one with a low
 * outlet has inlet and outlet side by side at its low end, and its flow goes up and comes back.
 *
 * @returns 65 rows of `cells` fractions, one after another; the mean of each row is its filling.
 */
export function fillShapes(cells: number, depthM: number, fallM: number, thereAndBack: boolean): number[] {
  const floorM = floorHeightsM(cells * slicesPerCell, fallM, thereAndBack);
  const shapes: number[] = [];
  for (let step = 0; step <= steps; step++) {
    const slices = slicesAt(step / steps, floorM, depthM, fallM);
    for (let cell = 0; cell < cells; cell++) {
      let filled = 0;
      for (let s = 0; s < slicesPerCell; s++) filled += at(slices, cell * slicesPerCell + s);
      shapes.push(filled / slicesPerCell);
    }
  }
  return columnOf(shapes);
}

function floorHeightsM(count: number, fallM: number, thereAndBack: boolean): number[] {
  return Array.from({ length: count }, (_, i) => {
    const along = (i + 0.5) / count;
    return fallM * (thereAndBack ? 1 - Math.abs(2 * along - 1) : along);
  });
}

/** Fillings of the slices under the level at which their mean is `filling`, scaled so that it is exactly so. */
function slicesAt(filling: number, floorM: readonly number[], depthM: number, fallM: number): number[] {
  let low = 0;
  let high = depthM + fallM;
  const under = (levelM: number) =>
    floorM.map((heightM) => Math.min(1, Math.max(0, (levelM - heightM) / depthM)));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (mean(under(middle)) < filling) low = middle;
    else high = middle;
  }
  const slices = under(high);
  const reached = mean(slices);
  return slices.map((value) => (reached === 0 ? 0 : (value * filling) / reached));
}

/**
 * Writes the water that belongs into each cell of a lane.
 *
 * @param laneKg - Water of the lane, 0 to a full lane and rounding.
 * @param cellKg - Water of a full cell.
 */
export function targetsInto(
  targetKg: number[],
  shapes: readonly number[],
  laneKg: number,
  cellKg: number,
): void {
  const cells = targetKg.length;
  const place = Math.min(1, laneKg / (cellKg * cells)) * steps;
  const step = Math.min(steps - 1, Math.floor(place));
  const share = place - step;
  let sumKg = 0;
  for (let i = 0; i < cells; i++) {
    const before = at(shapes, step * cells + i);
    const after = at(shapes, (step + 1) * cells + i);
    const kg = (before + (after - before) * share) * cellKg;
    targetKg[i] = kg;
    sumKg += kg;
  }
  // Rounding must not leave a gram behind.
  const stretch = sumKg > 0 ? laneKg / sumKg : 0;
  for (let i = 0; i < cells; i++) targetKg[i] = at(targetKg, i) * stretch;
}
