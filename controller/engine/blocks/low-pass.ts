/**
 * First-order low-pass by the implicit Euler rule: stable for every step, exact at rest.
 *
 * @param before - Output at the step before; null begins at the value.
 * @param elapsedMs, timeConstantMs - Times in one unit; the constant is above 0.
 */
export function lowPass(
  before: number | null,
  value: number,
  elapsedMs: number,
  timeConstantMs: number,
): number {
  return before === null ? value : before + (value - before) * (elapsedMs / (timeConstantMs + elapsedMs));
}
