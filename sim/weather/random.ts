/**
 * A number of [0, 1) that depends on its arguments alone, so that weather can be asked for at any
 * instant and noise be repeated. A 32-bit integer hash of the usual multiply-xorshift kind; good
 * enough for scenery, not for statistics or secrets.
 */
export function hashFraction(seed: number, stream: number, index: number): number {
  let bits =
    Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul(stream | 0, 0x85ebca6b) ^ Math.imul(index | 0, 0xc2b2ae35);
  bits = Math.imul(bits ^ (bits >>> 16), 0x7feb352d);
  bits = Math.imul(bits ^ (bits >>> 15), 0x846ca68b);
  return ((bits ^ (bits >>> 16)) >>> 0) / 0x1_0000_0000;
}

/** Nearly normal with mean 0 and standard deviation 1, within -3 to 3: the sum of three even draws. */
export function hashNormal(seed: number, stream: number, index: number): number {
  const sum =
    hashFraction(seed, stream, index * 3) +
    hashFraction(seed, stream, index * 3 + 1) +
    hashFraction(seed, stream, index * 3 + 2);
  return 2 * (sum - 1.5);
}

/** Smooth noise of [0, 1): drawn anew every `period` and joined by a curve without corners. */
export function smoothNoise(seed: number, stream: number, at: number, period: number): number {
  const place = at / period;
  const index = Math.floor(place);
  const before = hashFraction(seed, stream, index);
  const after = hashFraction(seed, stream, index + 1);
  return before + (after - before) * smoothStep(place - index);
}

/** 0 at 0 and below, 1 at 1 and above, level at both ends. */
export function smoothStep(fraction: number): number {
  const x = Math.min(1, Math.max(0, fraction));
  return x * x * (3 - 2 * x);
}
