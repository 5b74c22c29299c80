import { finEfficiency } from './fin.ts';

/** A sheet over water: a pan with its rim, or one of many tubes with the plate between. */
export interface WettedSheet {
  /** Width of sheet for each strip of water. */
  readonly pitchM: number;
  /** Width of the sheet that lies on the strip. */
  readonly onWaterM: number;
  /** Width through which heat passes into the water: that of the strip, or the circumference of a tube. */
  readonly wettedM: number;
  readonly lossWM2K: number;
  readonly sheetConductanceWK: number;
  /** From the sheet to the water, over the wetted width. */
  readonly contactWM2K: number;
}

/**
 * Collector efficiency factor F', 0 to 1: what arrives in the water over what would arrive if the whole
 * sheet were as cool as the water.
 *
 * Source: Duffie & Beckman, Solar Engineering of Thermal Processes, section 6.5, without bond resistance.
 */
export function efficiencyFactor(sheet: WettedSheet): number {
  const { pitchM, onWaterM, wettedM, lossWM2K, sheetConductanceWK, contactWM2K } = sheet;
  const fin = finEfficiency((pitchM - onWaterM) / 2, lossWM2K, sheetConductanceWK);
  const gatheringM = onWaterM + (pitchM - onWaterM) * fin;
  return 1 / lossWM2K / (pitchM * (1 / (lossWM2K * gatheringM) + 1 / (wettedM * contactWM2K)));
}
