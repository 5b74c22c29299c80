/**
 * The plant's water. Its properties are held constant so that mass and energy close exactly; real water
 * between 5 and 60 °C departs by up to 1.5 % in density and 0.4 % in heat capacity.
 */
export const waterKgL = 0.9982;
export const waterJKgK = 4184;
/** Heat of fusion; published values run from 333.4 to 333.6 kJ/kg. Heat capacity of ice from memory. */
export const fusionJKg = 333_500;
const iceJKgK = 2100;
/** Heat capacity of ice over that of water. */
export const iceAsWater = iceJKgK / waterJKgK;
/** No more than all but this share of a cell freezes, so that something is left to flow and to cool. */
const leastLiquidFraction = 0.05;

/**
 * Cells of well-mixed water in a row, one column of numbers for each quantity. Columns of plain numbers
 * are fast, and are the same after JSON.
 */
export interface Row {
  /** Liquid water. */
  readonly massKg: number[];
  readonly waterC: number[];
  /** Ice that stands in the cell. It does not flow. */
  readonly iceKg: number[];
}

/** A number of a column. The index must exist; asking the compiler to prove it would cost each cell a branch. */
export function at(column: readonly number[], index: number): number {
  return column[index] as number;
}

/**
 * A column of equal numbers that is fractional to the machine from its beginning: an engine that has met one kind
 * of column everywhere reads all of them without asking of which kind each is.
 */
export function column(count: number, value: number): number[] {
  const numbers: number[] = [];
  for (let i = 0; i < count; i++) numbers.push(0.5);
  return numbers.fill(value);
}

/** The same column, of the kind that `column` makes. */
export function columnOf(values: readonly number[]): number[] {
  const numbers = column(values.length, 0);
  for (let i = 0; i < values.length; i++) numbers[i] = at(values, i);
  return numbers;
}

export function createRow(count: number, totalKg: number, waterC: number): Row {
  return {
    massKg: column(count, totalKg / count),
    waterC: column(count, waterC),
    iceKg: column(count, 0),
  };
}

export function sum(column: readonly number[]): number {
  let total = 0;
  for (let i = 0; i < column.length; i++) total += at(column, i);
  return total;
}

/** All water of a row, ice included [kg]. */
export function rowKg(row: Row): number {
  return sum(row.massKg) + sum(row.iceKg);
}

/** All heat of a row above liquid water at 0 °C [J]. */
export function rowJ(row: Row): number {
  let total = 0;
  for (let i = 0; i < row.massKg.length; i++) total += cellJ(row, i);
  return total;
}

function cellJ(row: Row, i: number): number {
  const iceKg = at(row.iceKg, i);
  const liquidJ = at(row.massKg, i) * waterJKgK * at(row.waterC, i);
  return iceKg === 0 ? liquidJ : liquidJ + iceKg * (iceJKgK * at(row.waterC, i) - fusionJKg);
}

/** Heat capacity of a cell, ice included [J/K]. */
export function cellJK(row: Row, i: number): number {
  return at(row.massKg, i) * waterJKgK + at(row.iceKg, i) * iceJKgK;
}

/**
 * Freezes and thaws: brings each cell to the ice that belongs to its heat.
 *
 * No undercooling: water freezes at 0 °C, all but a twentieth of it, and what is frozen cools further.
 */
export function settleIce(row: Row): void {
  for (let i = 0; i < row.massKg.length; i++) {
    if (at(row.waterC, i) >= 0 && at(row.iceKg, i) === 0) continue;
    const heatJ = cellJ(row, i);
    const oldIceKg = at(row.iceKg, i);
    const allKg = at(row.massKg, i) + oldIceKg;
    // Water may have drained away from the ice: what is frozen already stays so.
    const mostKg = Math.max(oldIceKg, (1 - leastLiquidFraction) * allKg);
    const iceKg = Math.min(Math.max(0, -heatJ / fusionJKg), mostKg);
    row.iceKg[i] = iceKg;
    row.massKg[i] = allKg - iceKg;
    const capacityJK = cellJK(row, i);
    if (capacityJK > 0) row.waterC[i] = (heatJ + iceKg * fusionJKg) / capacityJK;
  }
}

/**
 * Lets cells lose heat to surroundings, each through an equal share of a conductance.
 *
 * @returns The heat lost [J], negative when the surroundings are warmer. Implicit in time, so that any
 * step is stable and the heat is exactly what the cells lost.
 */
export function loseHeat(row: Row, lossWK: number, aroundC: number, dtS: number): number {
  const count = row.massKg.length;
  const shareJK = (lossWK / count) * dtS;
  let lostJ = 0;
  for (let i = 0; i < count; i++) {
    const capacityJK = cellJK(row, i);
    if (capacityJK === 0) continue;
    const waterC = (capacityJK * at(row.waterC, i) + shareJK * aroundC) / (capacityJK + shareJK);
    row.waterC[i] = waterC;
    lostJ += shareJK * (waterC - aroundC);
  }
  return lostJ;
}
