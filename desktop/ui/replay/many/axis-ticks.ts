/**
 * Round values within a span, at most so many, rising; both ends included where they are round.
 *
 * @param leastStep - 1 for what is counted: half a start is nothing.
 */
export function axisTicks(least: number, most: number, count: number, leastStep = 0): readonly number[] {
  const wide = most - least;
  if (!(wide > 0)) return [least];
  const rough = Math.max(leastStep, wide / Math.max(1, count - 1));
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((factor) => factor * power >= rough * (1 - 1e-9)) ?? 10);
  const first = Math.ceil(least / step - 1e-9);
  const last = Math.floor(most / step + 1e-9);
  // A product of whole numbers and a step ends in no tail of nines.
  return Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  );
}
