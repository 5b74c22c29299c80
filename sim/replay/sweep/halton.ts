/**
 * Points that fill a cube evenly, however few they are: the sequence of Halton (1960), Numerische Mathematik
 * 2, 84-90, shifted as a whole by Cranley and Patterson (1976), SIAM Journal on Numerical Analysis 13, 904-914,
 * so that another seed gives other points (both from memory).
 */

const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71];

/** Most directions that a sample has. */
export const mostDirections = primes.length;

/** The digits of `index` in the prime base of a direction, mirrored behind the point, 0 to below 1. */
export function halton(index: number, direction: number): number {
  const base = primes[direction] ?? Number.NaN;
  let fraction = 1;
  let sum = 0;
  for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
    fraction /= base;
    sum += fraction * (rest % base);
  }
  return sum;
}

/** @param shift - 0 to below 1. */
export function shifted(value: number, shift: number): number {
  const sum = value + shift;
  return sum >= 1 ? sum - 1 : sum;
}
