/**
 * Velocity that carries air down a return pipe, so that it fills and pulls [m/s].
 *
 * Common practice says 2 feet a second; published experiments differ (Botpaev et al., Solar Energy 128
 * (2016) 41), hence a range.
 */
export const siphonFromMs = 0.3;
export const siphonSureMs = 0.6096;

/** Fall that lets a pipe run empty: a quarter of an inch a foot (common practice). */
export const leastFallFraction = 1 / 48;

/** Mean velocity in a pipe that runs full [m/s]. */
export function pipeVelocityMs(flowLMin: number, insideM: number): number {
  return flowLMin / 60_000 / ((Math.PI / 4) * insideM ** 2);
}

/** Flow of a pipe that runs full [L/min]. */
export function pipeFlowLMin(velocityMs: number, insideM: number): number {
  return velocityMs * (Math.PI / 4) * insideM ** 2 * 60_000;
}
