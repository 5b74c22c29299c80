/** What one step, or a sum of steps, brought into the loop and took out of it. */
export interface Account {
  /** Heat from sun and sky into the sheet, negative on a clear night. */
  gainJ: number;
  /** Heat of the pump that stays in the water. */
  pumpJ: number;
  /** Electricity of the pump, of which `pumpJ` is a part. */
  electricityJ: number;
  /** Heat that came with the cold make-up. */
  madeUpJ: number;
  /** Heat lost from the sheet to the air, through the liner, from the pipes, from store and reservoir. */
  airJ: number;
  linerJ: number;
  pipeJ: number;
  storeJ: number;
  /** Heat drawn off with hot water, and lost with water that ran over. */
  drawnJ: number;
  overflowJ: number;
  /** Change of the heat that the loop holds. */
  heldJ: number;
  drawnKg: number;
  madeUpKg: number;
  overflowKg: number;
  /** Change of the water that the loop holds. */
  heldKg: number;
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
    drawnJ: 0,
    overflowJ: 0,
    heldJ: 0,
    drawnKg: 0,
    madeUpKg: 0,
    overflowKg: 0,
    heldKg: 0,
  };
}

/** Adds a step to a sum. */
export function addAccount(sum: Account, step: Account): void {
  for (const key of Object.keys(sum) as (keyof Account)[]) sum[key] += step[key];
}

/** Heat that the account cannot explain [J]; rounding alone. */
export function unexplainedJ(a: Account): number {
  const inJ = a.gainJ + a.pumpJ + a.madeUpJ;
  return a.heldJ - (inJ - a.airJ - a.linerJ - a.pipeJ - a.storeJ - a.drawnJ - a.overflowJ);
}

/** Water that the account cannot explain [kg]; rounding alone. */
export function unexplainedKg(a: Account): number {
  return a.heldKg - (a.madeUpKg - a.drawnKg - a.overflowKg);
}
