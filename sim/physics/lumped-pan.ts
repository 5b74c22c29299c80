/** A pan whose water and sheet have one temperature. */
export interface LumpedPan {
  /** Sun and sky at air temperature [W/m2]. */
  readonly gainWM2: number;
  readonly lossWM2K: number;
  /** Water and sheet over each square metre [J/m2K]. */
  readonly capacityJM2K: number;
  readonly airC: number;
}

/** Where the pan ends if nothing changes [°C]. */
export function stillPanC({ gainWM2, lossWM2K, airC }: LumpedPan): number {
  return airC + gainWM2 / lossWM2K;
}

/** Time in which all but 37 % of a difference is gone [s]. */
export function timeConstantS({ lossWM2K, capacityJM2K }: LumpedPan): number {
  return capacityJM2K / lossWM2K;
}

/** Temperature after a time under steady load [°C]: T = Tinf + (T0 - Tinf) exp(-U t / C). */
export function lumpedPanC(pan: LumpedPan, startC: number, seconds: number): number {
  const finalC = stillPanC(pan);
  return finalC + (startC - finalC) * Math.exp(-seconds / timeConstantS(pan));
}
