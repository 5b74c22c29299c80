import { type SkyLoad, sheetGainWM2, sheetLossWM2K } from '../physics/collector.ts';
import type { WettedSheet } from '../physics/heat-removal.ts';
import type { LumpedPan } from '../physics/lumped-pan.ts';
import { type Parts, panCells } from '../plant/parts.ts';
import { waterJKgK } from '../plant/water.ts';

/** Water surface of the full pan. */
export function wettedM2({ pan: { core, edge } }: Parts): number {
  return panCells * (core.wettedM2 + edge.wettedM2);
}

/** The full pan as one body under a load, every number over a square metre of water. */
export function bodyUnder(parts: Parts, load: SkyLoad): LumpedPan {
  const { pan, collector, traits } = parts;
  const sheet = pan.sheetM2 / wettedM2(parts);
  const downWM2K = ((pan.core.linerWK + pan.edge.linerWK) * panCells) / wettedM2(parts);
  return {
    gainWM2: sheet * sheetGainWM2(load, collector),
    lossWM2K: sheet * sheetLossWM2K(load.windMs, collector) + downWM2K,
    capacityJM2K: (pan.fullKg * waterJKgK) / wettedM2(parts) + sheet * traits.sheetJM2K,
    airC: load.airC,
  };
}

/**
 * The sheet as a textbook sees it: a strip of water between two dry rims, as wide as the pan's own rim.
 *
 * The collector's coefficients speak of the water; the sheet itself, being warmer, loses by more:
 * U / (1 - U/h) with the conductance h from sheet to water.
 */
export function sheetIn(parts: Parts, grossM2: number, windMs: number): WettedSheet {
  const { pan, collector, traits } = parts;
  const halfRoundM = pan.walls.lengthM + pan.walls.widthM;
  const onWaterM = wettedM2(parts) / halfRoundM;
  const formWM2K = sheetLossWM2K(windMs, collector);
  return {
    pitchM: grossM2 / halfRoundM,
    onWaterM,
    wettedM: onWaterM,
    lossWM2K: formWM2K / (1 - Math.min(0.8, formWM2K / traits.contactWM2K)),
    sheetConductanceWK: traits.sheetConductanceWK,
    contactWM2K: traits.contactWM2K * traits.contactFraction * (1 - pan.airKeptFraction),
  };
}
