import type { Cell } from './water.ts';

/** Water that leaves one cell of a row, at that cell's new temperature. */
export interface Outflow {
  readonly cell: number;
  readonly massKg: number;
}

/** Water that enters one cell of a row. */
export interface Inflow extends Outflow {
  readonly waterC: number;
}

/**
 * Moves water along a row of cells that stand equally full: what enters and leaves shifts the rest so
 * that all end with the same mass, and every cell mixes with what comes into it.
 *
 * Mass and enthalpy are kept to rounding whatever the amounts: cells are worked in the order of flow,
 * and all that leaves a cell has its new temperature. What leaves must not exceed what is there.
 */
export function moveAlong(cells: Cell[], enters: readonly Inflow[], leaves: readonly Outflow[]): void {
  const count = cells.length;
  const balanceKg = cells.map((cell) => cell.massKg);
  for (const port of enters) balanceKg[port.cell] = (balanceKg[port.cell] ?? 0) + port.massKg;
  for (const port of leaves) balanceKg[port.cell] = (balanceKg[port.cell] ?? 0) - port.massKg;
  const eachKg = Math.max(0, balanceKg.reduce((sum, kg) => sum + kg, 0) / count);
  const onwardKg: number[] = [];
  let carriedKg = 0;
  for (let i = 0; i < count - 1; i++) {
    carriedKg += (balanceKg[i] ?? 0) - eachKg;
    onwardKg.push(carriedKg);
  }
  mixInOrder(cells, enters, onwardKg);
  for (const cell of cells) cell.massKg = eachKg;
}

/** Mixes each cell once both of its neighbours that feed it are done. Positive flow runs to the next cell. */
function mixInOrder(cells: Cell[], enters: readonly Inflow[], onwardKg: readonly number[]): void {
  const done = cells.map(() => false);
  for (let left = cells.length; left > 0; ) {
    for (const [i, cell] of cells.entries()) {
      const fromBeforeKg = Math.max(0, onwardKg[i - 1] ?? 0);
      const fromAfterKg = Math.max(0, -(onwardKg[i] ?? 0));
      if (done[i] || (fromBeforeKg > 0 && !done[i - 1]) || (fromAfterKg > 0 && !done[i + 1])) continue;
      let massKg = cell.massKg + fromBeforeKg + fromAfterKg;
      let product =
        cell.massKg * cell.waterC +
        fromBeforeKg * (cells[i - 1]?.waterC ?? 0) +
        fromAfterKg * (cells[i + 1]?.waterC ?? 0);
      for (const port of enters)
        if (port.cell === i) {
          massKg += port.massKg;
          product += port.massKg * port.waterC;
        }
      if (massKg > 0) cell.waterC = product / massKg;
      done[i] = true;
      left--;
    }
  }
}
