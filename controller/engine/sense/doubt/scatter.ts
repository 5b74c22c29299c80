import type { Sample } from '../../state.ts';

/** Share of a new sample in the mean: it forgets over a hundred samples; a design choice. */
const share = 0.01;
/** A single spike of any size counts as no more than this, so that it alone makes no noise. */
const most = 10;
/** Three samples over a longer time [ms] tell of the weather as much as of the sensor. */
const longestMs = 30_000;

/**
 * Mean size of the second difference of samples, in the channel's unit: a straight course has none, and
 * normal noise of standard deviation s has 1.95 s.
 */
export function scatterAfter(before: number, samples: readonly Sample[]): number {
  if (samples.length < 3) return before;
  const [oldest, middle, newest] = samples as [Sample, Sample, Sample];
  if (newest.atMs - oldest.atMs > longestMs) return before;
  const size = Math.abs(oldest.value - 2 * middle.value + newest.value);
  return before + share * (Math.min(size, most) - before);
}
