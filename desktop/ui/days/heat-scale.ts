import type { Scheme } from '../charts/colours.ts';

/**
 * Shades of a day's heat, from little to much: one hue whose lightness goes one way, so that it reads alike
 * with every kind of colour vision. The colours are a design choice.
 */
export const heatShades: Readonly<Record<Scheme, readonly string[]>> = {
  light: ['#e3ecf4', '#c3d8e9', '#94b9d7', '#4f88b6', '#174f7e'],
  dark: ['#232c34', '#243f57', '#2c6193', '#6ba3d3', '#b4d6f2'],
};

/** Widths of a class that are easily read, times a power of ten. */
const roundWidths = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** Width of a class, so that the best day lies in the last class or just at its end; of the unit of `best`. */
export function classWidth(best: number, classes: number): number {
  if (best <= 0) return 1;
  const wanted = best / classes;
  const power = 10 ** Math.floor(Math.log10(wanted));
  // A hair of rounding must not push a width to the next.
  const round = roundWidths.find((one) => one * power >= wanted * (1 - 1e-9));
  return (round as number) * power;
}

/** Class of a day's heat, from 0; undefined when it brought nothing home. */
export function heatClass(heat: number, width: number, classes: number): number | undefined {
  return heat <= 0 ? undefined : Math.min(classes - 1, Math.floor(heat / width));
}
