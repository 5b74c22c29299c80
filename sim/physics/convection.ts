import { stefanBoltzmannWM2K4 } from '../weather/sky.ts';

/**
 * Convection from a plate to the wind [W/m2K] by the velocity over it [m/s], after those who measured it.
 *
 * They differ by a factor of one and a half: velocity was measured at different places, and some of the
 * older values hold some radiation. The coefficients are those that later papers quote.
 */
export const plateConvectionWM2K = {
  /** Watmuff, Charters & Proctor 1977; without radiation. */
  watmuff1977: (windMs: number) => 2.8 + 3 * windMs,
  /** Juerges 1924 in the form of McAdams 1954, below 5 m/s; holds some radiation. */
  mcAdams1954: (windMs: number) => 5.7 + 3.8 * windMs,
  /** Sharples & Charlesworth 1998, on a roof; one wind incidence of several. */
  sharples1998: (windMs: number) => 6.5 + 3.3 * windMs,
  /** Kumar & Mullick 2010, an unglazed plate outdoors. */
  kumar2010: (windMs: number) => 6.9 + 3.87 * windMs,
} as const;

/**
 * Thermal resistance of an outside surface to air and surroundings [m2K/W].
 *
 * @param windMs - Wind beside the surface [m/s]. @param emissivity - 0 to 1.
 * @param meanC - Mean of surface and surroundings [°C].
 * Source: ISO 6946, 1/(4 + 4 v + eps 4 sigma T^3); its table A.2 has eps 0.9 and 10 °C.
 */
export function outsideResistanceM2KW(windMs: number, emissivity: number, meanC: number): number {
  const radiationWM2K = 4 * emissivity * stefanBoltzmannWM2K4 * (meanC + 273.15) ** 3;
  return 1 / (4 + 4 * windMs + radiationWM2K);
}
