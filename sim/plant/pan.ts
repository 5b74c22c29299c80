import { blackSheet, type SkyLoad, sheetGainWM2, sheetLossWM2K } from './collector.ts';
import type { Parts } from './parts.ts';
import { type Cell, totalKg, waterJKgK } from './water.ts';

/** A stretch of the pan along the flow: sheet above, water below as far as there is any. */
export interface PanCell extends Cell {
  sheetC: number;
}

export interface PanHeat {
  /** Brought by sun and sky to the sheet [J]. */
  readonly gainJ: number;
  /** Lost from the sheet to the air [J]. */
  readonly airJ: number;
  /** Lost through the liner [J]. */
  readonly linerJ: number;
}

/** Share of its depth that the pan holds, 0 to 1 and a little more while it overflows. */
export function fillFraction(cells: readonly PanCell[], parts: Parts): number {
  return totalKg(cells) / parts.pan.fullKg;
}

/**
 * Heats and cools sheet and water of every cell over one step.
 *
 * The steady collector form acts on the sheet, which passes heat on to the water in proportion to how
 * full its cell is. Both temperatures are solved together and implicitly: stable at any step, and the
 * heat in the account is exactly what the cell gained. Water below 0 °C stays liquid here, so the
 * plant is early rather than late about frost.
 */
export function heatPan(cells: PanCell[], parts: Parts, load: SkyLoad, dtS: number): PanHeat {
  const { pan } = parts;
  const areaM2 = pan.grossAreaM2 / cells.length;
  const wettedM2 = (pan.wettedAreaM2 / cells.length) * Math.min(1, fillFraction(cells, parts));
  const gainW = sheetGainWM2(load, blackSheet) * areaM2;
  const airWK = sheetLossWM2K(load.windMs, blackSheet) * areaM2;
  const contactWK = pan.contactWM2K * wettedM2;
  const linerWK = pan.linerWM2K * wettedM2;
  const sheetJK = pan.sheetJM2K * areaM2;
  let airJ = 0;
  let linerJ = 0;
  for (const cell of cells) {
    const waterJK = cell.massKg * waterJKgK;
    const sheetKnownJ = sheetJK * cell.sheetC + (gainW + airWK * load.airC) * dtS;
    const waterKnownJ = waterJK * cell.waterC + linerWK * load.airC * dtS;
    const acrossJK = contactWK * dtS;
    const sheetSelfJK = sheetJK + airWK * dtS + acrossJK;
    const waterSelfJK = waterJK + linerWK * dtS + acrossJK;
    if (waterJK > 0) {
      const determinant = sheetSelfJK * waterSelfJK - acrossJK * acrossJK;
      cell.sheetC = (sheetKnownJ * waterSelfJK + acrossJK * waterKnownJ) / determinant;
      cell.waterC = (waterKnownJ + acrossJK * cell.sheetC) / waterSelfJK;
      linerJ += linerWK * (cell.waterC - load.airC) * dtS;
    } else {
      cell.sheetC = sheetKnownJ / (sheetJK + airWK * dtS);
      cell.waterC = cell.sheetC;
    }
    airJ += airWK * (cell.sheetC - load.airC) * dtS;
  }
  return { gainJ: gainW * cells.length * dtS, airJ, linerJ };
}

/** Heat held by the sheet above 0 °C [J]. */
export function sheetJ(cells: readonly PanCell[], parts: Parts): number {
  const eachJK = (parts.pan.sheetJM2K * parts.pan.grossAreaM2) / cells.length;
  return cells.reduce((sum, cell) => sum + eachJK * cell.sheetC, 0);
}
