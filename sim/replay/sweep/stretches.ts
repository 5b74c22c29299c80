interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Time that one stretch or several hold, each instant once [s]. @param stretches - In the order of their beginnings. */
export function timeS(stretches: readonly Stretch[]): number {
  let sumMs = 0;
  let doneMs = Number.NEGATIVE_INFINITY;
  for (const { fromMs, toMs } of stretches) {
    sumMs += Math.max(0, toMs - Math.max(fromMs, doneMs));
    doneMs = Math.max(doneMs, toMs);
  }
  return sumMs / 1000;
}
