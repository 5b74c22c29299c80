import { fusionJKg } from './water.ts';

/** Fresh to settled snow: 150 kg/m3 and 0.15 W/mK (from memory, in the usual order of size). */
const snowKgM3 = 150;
const snowWMK = 0.15;
/** From a warm sheet to the snow that melts on it. */
const meltWM2K = 30;
/** This much covers the sheet, and a closed cover keeps this share of the sun away. */
const closedKgM2 = 3;
const shadedFraction = 0.85;

/** What snow on the sheet does to it. */
export interface SnowCover {
  readonly sunFraction: number;
  /** Thermal resistance over the sheet. */
  readonly resistanceM2KW: number;
  /** From sheet to melting snow, while the sheet is above 0 °C. */
  readonly meltWM2K: number;
}

const bare: SnowCover = { sunFraction: 1, resistanceM2KW: 0, meltWM2K: 0 };

export function snowCover(snowKgM2: number): SnowCover {
  if (snowKgM2 <= 0) return bare;
  const cover = Math.min(1, snowKgM2 / closedKgM2);
  return {
    sunFraction: 1 - shadedFraction * cover,
    resistanceM2KW: snowKgM2 / snowKgM3 / snowWMK,
    meltWM2K: meltWM2K * cover,
  };
}

/** Snow that thaws from above for each degree of the air over 0 °C in a day; practice gives 2 to 6 (from memory). */
const thawMmKDay = 4;

/** Snow that lies after a step in which it fell, melted on the sheet, and thawed in the air [kg/m2]. */
export function snowAfter(
  snowKgM2: number,
  fallenMmH: number,
  meltedJM2: number,
  airC: number,
  dtS: number,
): number {
  if (snowKgM2 === 0 && fallenMmH === 0) return 0;
  const thawedKgM2 = (thawMmKDay * Math.max(0, airC) * dtS) / 86_400;
  return Math.max(0, snowKgM2 + (fallenMmH * dtS) / 3600 - meltedJM2 / fusionJKg - thawedKgM2);
}
