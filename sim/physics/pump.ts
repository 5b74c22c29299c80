/** Head at no flow over the head at the rated flow. */
const shutOffOverRated = 4 / 3;

/**
 * Head of a centrifugal pump of which one point is known [m]; negative far beyond that point.
 *
 * A parabola from a shut-off head of 4/3 of the rated head through the rated point (common practice where
 * no curve is at hand; a real pump may be 15 % off). Speed acts by the affinity laws: flow with the speed,
 * head with its square, so that H = s^2 H0 - a Q^2.
 *
 * @param flowFraction - Flow over the rated flow, 0 or more.
 * @param speedFraction - Speed over full speed, 0 to 1.
 * @param ratedHeadM - Head at rated flow and full speed [m].
 */
export function pumpHeadM(flowFraction: number, speedFraction: number, ratedHeadM: number): number {
  const shutOffM = shutOffOverRated * ratedHeadM;
  return speedFraction ** 2 * shutOffM - (shutOffM - ratedHeadM) * flowFraction ** 2;
}
