import { at, column, iceAsWater, type Row } from './water.ts';

/** Water that is about to enter and leave the cells of a row, one number a cell. */
export interface Exchange {
  readonly inKg: number[];
  /** Mass times temperature of what enters [kg °C]. */
  readonly inKgC: number[];
  readonly outKg: number[];
  /** Flow from each cell to the next, as the newest move found it [kg]; negative runs back. */
  readonly onwardKg: number[];
  /** All that is about to enter or leave; 0 when the exchange is empty. */
  pendingKg: number;
}

export function createExchange(count: number): Exchange {
  return {
    inKg: column(count, 0),
    inKgC: column(count, 0),
    outKg: column(count, 0),
    onwardKg: column(count, 0),
    pendingKg: 0,
  };
}

export function letIn(exchange: Exchange, cell: number, massKg: number, waterC: number): void {
  exchange.inKg[cell] = at(exchange.inKg, cell) + massKg;
  exchange.inKgC[cell] = at(exchange.inKgC, cell) + massKg * waterC;
  exchange.pendingKg += massKg;
}

/** Water let out leaves with the temperature that its cell has after the move. */
export function letOut(exchange: Exchange, cell: number, massKg: number): void {
  exchange.outKg[cell] = at(exchange.outKg, cell) + massKg;
  exchange.pendingKg += massKg;
}

/**
 * Moves water along a row: what enters and leaves shifts the rest so that every cell ends with its target,
 * and mixes with what comes into it. Then the exchange is empty again.
 *
 * Mass and heat are kept to rounding whatever the amounts, since cells are worked in the order of flow and
 * all that leaves a cell has its new temperature. What leaves must not exceed what is there.
 *
 * @param targetKg - Mass of each cell afterwards; their sum must be what then is in the row. Equal shares
 * when absent.
 */
export function moveAlong(row: Row, exchange: Exchange, targetKg?: readonly number[]): void {
  const { massKg } = row;
  const { inKg, inKgC, outKg, onwardKg } = exchange;
  const count = massKg.length;
  let eachKg = 0;
  if (targetKg === undefined) {
    for (let i = 0; i < count; i++) eachKg += at(massKg, i) + at(inKg, i) - at(outKg, i);
    eachKg = Math.max(0, eachKg / count);
  }
  let carriedKg = 0;
  let first = 0;
  for (let i = 0; i < count; i++) {
    const restKg = targetKg === undefined ? eachKg : at(targetKg, i);
    carriedKg += at(massKg, i) + at(inKg, i) - at(outKg, i) - restKg;
    onwardKg[i] = i < count - 1 ? carriedKg : 0;
    // Cells that are fed from the next one wait for it: a stretch of backward flow is mixed in reverse.
    if (at(onwardKg, i) < 0) continue;
    for (let j = i; j >= first; j--) mixCell(row, exchange, j);
    first = i + 1;
  }
  for (let i = 0; i < count; i++) {
    massKg[i] = targetKg === undefined ? eachKg : at(targetKg, i);
    inKg[i] = 0;
    inKgC[i] = 0;
    outKg[i] = 0;
  }
  exchange.pendingKg = 0;
}

/** Ice in a cell takes part in its temperature, though it does not flow. */
function mixCell({ massKg, waterC, iceKg }: Row, { inKg, inKgC, onwardKg }: Exchange, i: number): void {
  const stayingKg = at(massKg, i) + at(iceKg, i) * iceAsWater;
  let mixedKg = stayingKg + at(inKg, i);
  let mixedKgC = stayingKg * at(waterC, i) + at(inKgC, i);
  const fromBeforeKg = i === 0 ? 0 : at(onwardKg, i - 1);
  if (fromBeforeKg > 0) {
    mixedKg += fromBeforeKg;
    mixedKgC += fromBeforeKg * at(waterC, i - 1);
  }
  const fromAfterKg = -at(onwardKg, i);
  if (fromAfterKg > 0) {
    mixedKg += fromAfterKg;
    mixedKgC += fromAfterKg * at(waterC, i + 1);
  }
  if (mixedKg > 0) waterC[i] = mixedKgC / mixedKg;
}

/**
 * Takes liquid water out of a row at the temperatures that it has, from one end onward.
 *
 * The cells are left uneven; the next move evens them. There must be as much liquid as is taken.
 *
 * @returns Mass times temperature of what was taken [kg °C].
 */
export function takeFromEnd(row: Row, massKg: number, fromLast: boolean): number {
  const count = row.massKg.length;
  let leftKg = massKg;
  let takenKgC = 0;
  for (let step = 0; step < count && leftKg > 0; step++) {
    const i = fromLast ? count - 1 - step : step;
    const takenKg = Math.min(leftKg, at(row.massKg, i));
    row.massKg[i] = at(row.massKg, i) - takenKg;
    takenKgC += takenKg * at(row.waterC, i);
    leftKg -= takenKg;
  }
  return takenKgC;
}
