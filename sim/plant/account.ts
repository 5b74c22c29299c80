import { type PlantState, plantJ, plantKg } from './state.ts';

/** What steps brought into the loop and took out of it; a running sum. */
export interface Account {
  /** Heat from sun and sky into the sheet, negative on a clear night. */
  gainJ: number;
  /** Heat of the pump that stays in the water. */
  pumpJ: number;
  /** Electricity of the pump, of which `pumpJ` is a part. */
  electricityJ: number;
  /** Heat that came with the cold make-up. */
  madeUpJ: number;
  /** Heat lost from the sheet to air and rain, through liner and walls, from the pipes, from store and reservoir. */
  airJ: number;
  linerJ: number;
  pipeJ: number;
  storeJ: number;
  /** Heat that a heat dump gave to the air. */
  dumpedJ: number;
  /** Heat that melted snow. */
  snowJ: number;
  /** Heat that left with water: drawn, run over, lost to the ground. */
  drawnJ: number;
  overflowJ: number;
  leakedJ: number;
  drawnKg: number;
  madeUpKg: number;
  overflowKg: number;
  leakedKg: number;
  /** Heat that the loop brought into the store less what it took there. Part of no balance, but what it is all for. */
  homeJ: number;
}

export function emptyAccount(): Account {
  return {
    gainJ: 0,
    pumpJ: 0,
    electricityJ: 0,
    madeUpJ: 0,
    airJ: 0,
    linerJ: 0,
    pipeJ: 0,
    storeJ: 0,
    dumpedJ: 0,
    snowJ: 0,
    drawnJ: 0,
    overflowJ: 0,
    leakedJ: 0,
    drawnKg: 0,
    madeUpKg: 0,
    overflowKg: 0,
    leakedKg: 0,
    homeJ: 0,
  };
}

/** An account beside what the loop held when it was opened. */
export interface Books {
  readonly account: Account;
  readonly heldJ: number;
  readonly heldKg: number;
}

export function openBooks(state: PlantState): Books {
  return { account: emptyAccount(), heldJ: plantJ(state), heldKg: plantKg(state) };
}

/** Heat that the books cannot explain [J]; rounding alone. */
export function unexplainedJ({ account: a, heldJ }: Books, state: PlantState): number {
  const inJ = a.gainJ + a.pumpJ + a.madeUpJ;
  const outJ =
    a.airJ + a.linerJ + a.pipeJ + a.storeJ + a.dumpedJ + a.snowJ + a.drawnJ + a.overflowJ + a.leakedJ;
  return plantJ(state) - heldJ - (inJ - outJ);
}

/** Water that the books cannot explain [kg]; rounding alone. */
export function unexplainedKg({ account: a, heldKg }: Books, state: PlantState): number {
  return plantKg(state) - heldKg - (a.madeUpKg - a.drawnKg - a.overflowKg - a.leakedKg);
}
