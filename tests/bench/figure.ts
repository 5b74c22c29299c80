/** One measured number, printed as a JSON line. */
export interface Figure {
  readonly bench: string;
  readonly figure: string;
  readonly value: number;
  /** `1`: a ratio of two times taken in the same run, which a busy machine cannot distort much. */
  readonly unit: 'ns' | 'ms' | 'MB' | 'kB' | '1' | 'days/s' | 'us';
  /** What the figure is held to, where it is held to something. */
  readonly atMost?: number;
  readonly atLeast?: number;
}

export function report(figure: Figure): void {
  const rounded = { ...figure, value: Number(figure.value.toPrecision(4)) };
  const { value, atMost = Number.POSITIVE_INFINITY, atLeast = Number.NEGATIVE_INFINITY } = figure;
  const held = figure.atMost !== undefined || figure.atLeast !== undefined;
  console.log(JSON.stringify({ ...rounded, ...(held ? { met: value <= atMost && value >= atLeast } : {}) }));
}

/** @returns the middle value; NaN for none. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(middle)] ?? Number.NaN) + (sorted[Math.ceil(middle)] ?? Number.NaN)) / 2;
}

/** Median time of several calls of `work` [ms]. */
export function timeMs(repeats: number, work: () => void): number {
  const times: number[] = [];
  for (let index = 0; index < repeats; index++) {
    const startMs = performance.now();
    work();
    times.push(performance.now() - startMs);
  }
  return median(times);
}
