/** The greatest of 1, 2 and 5 times a power of ten that is not above a number greater than 0. */
export function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  return power * ([5, 2].find((factor) => factor * power <= value * (1 + 1e-9)) ?? 1);
}
