import { formatHex, luminance, parseHex } from './colours.ts';

/** Water as cold and as hot as the scale tells apart; beyond it the end colours stand. */
export const scaleColdC = 10;
export const scaleHotC = 70;

/**
 * Nine knots of the map cividis, dark blue to yellow, in equal steps: it reads alike with full and
 * with red-green-deficient colour vision, and its lightness rises all the way.
 *
 * After Nuñez, Anderton and Renslow, PLOS ONE 13(7) e0199239 (2018). The knots are from memory; what
 * is tested is what matters here, that lightness rises with each of them.
 */
const knots = [
  '#00224e',
  '#123570',
  '#3b496c',
  '#575d6d',
  '#707173',
  '#8a8779',
  '#a69d75',
  '#c4b56c',
  '#fee838',
] as const;

/** Colour of water at a temperature [°C]. */
export function waterColour(temperatureC: number): string {
  const share = (temperatureC - scaleColdC) / (scaleHotC - scaleColdC);
  const place = Math.min(1, Math.max(0, share)) * (knots.length - 1);
  const below = Math.min(Math.floor(place), knots.length - 2);
  const from = parseHex(knots[below] as string);
  const to = parseHex(knots[below + 1] as string);
  const blend = (a: number, b: number) => a + (b - a) * (place - below);
  return formatHex({
    red: blend(from.red, to.red),
    green: blend(from.green, to.green),
    blue: blend(from.blue, to.blue),
  });
}

/** Black or white, whichever reads better on the colour: at least 4.5:1 on any. */
export function inkOn(colour: string): '#000000' | '#ffffff' {
  // Where the contrasts with black and with white are equal: (L + 0.05)^2 = 0.05 * 1.05.
  return luminance(colour) > Math.sqrt(0.05 * 1.05) - 0.05 ? '#000000' : '#ffffff';
}
