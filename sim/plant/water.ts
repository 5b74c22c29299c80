/**
 * The plant's water. Both are held constant so that mass and energy close exactly; real water between
 * 5 and 60 °C departs by up to 1.5 % in density and 0.4 % in heat capacity.
 */
export const waterKgL = 0.9982;
export const waterJKgK = 4184;

/** Water that is well mixed within its bounds. */
export interface Cell {
  massKg: number;
  waterC: number;
}

/** Enthalpy above water at 0 °C [J]. */
export function enthalpyJ(massKg: number, waterC: number): number {
  return massKg * waterJKgK * waterC;
}

export function totalKg(cells: readonly Cell[]): number {
  let sum = 0;
  for (const cell of cells) sum += cell.massKg;
  return sum;
}

export function totalJ(cells: readonly Cell[]): number {
  let sum = 0;
  for (const cell of cells) sum += enthalpyJ(cell.massKg, cell.waterC);
  return sum;
}

/**
 * Lets cells lose heat to surroundings, each through an equal share of a conductance.
 *
 * @returns The heat lost [J], negative when the surroundings are warmer. Implicit in time, so that any
 * step is stable and the heat is exactly what the cells lost.
 */
export function loseHeat(cells: Cell[], lossWK: number, aroundC: number, dtS: number): number {
  const shareJK = (lossWK / cells.length) * dtS;
  let lostJ = 0;
  for (const cell of cells) {
    const capacityJK = cell.massKg * waterJKgK;
    if (capacityJK === 0) continue;
    cell.waterC = (capacityJK * cell.waterC + shareJK * aroundC) / (capacityJK + shareJK);
    lostJ += shareJK * (cell.waterC - aroundC);
  }
  return lostJ;
}
