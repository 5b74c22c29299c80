/**
 * A column with its holes filled: straight lines between what is known, and the nearest beyond both ends.
 *
 * @returns undefined when nothing is known.
 */
export function filled(values: Float64Array | undefined): Float64Array | undefined {
  if (values === undefined) return undefined;
  const result = values.slice();
  let known = -1;
  for (let i = 0; i < result.length; i++) {
    if (Number.isNaN(result[i])) continue;
    const from = known < 0 ? (result[i] as number) : (result[known] as number);
    const slope = ((result[i] as number) - from) / (i - known);
    for (let hole = known + 1; hole < i; hole++)
      result[hole] = known < 0 ? from : from + slope * (hole - known);
    known = i;
  }
  if (known < 0) return undefined;
  return result.fill(result[known] as number, known + 1);
}

/** Mean over the values within `reach` on both sides of each, as many as there are. */
export function smoothed(values: Float64Array, reach: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = (sums[i] as number) + (values[i] as number);
  return values.map((_, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(values.length, i + reach + 1);
    return ((sums[to] as number) - (sums[from] as number)) / (to - from);
  });
}

/** The middle value; not a number of none. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? Number.NaN)) / 2;
}
