/**
 * Share of its heat that a sheet brings from a dry strip to the water beside it, 0 to 1.
 *
 * @param lengthM - From the water's edge to the outer edge, where no heat flows [m], 0 or more.
 * @param lossWM2K - Loss of the sheet to the air [W/m2K].
 * @param sheetConductanceWK - Conductivity times thickness [W/K]; at 0 nothing arrives.
 *
 * Source: tanh(mL)/(mL), m = sqrt(U/(k d)): the straight fin of any textbook of heat transfer.
 */
export function finEfficiency(lengthM: number, lossWM2K: number, sheetConductanceWK: number): number {
  if (lengthM === 0) return 1;
  if (sheetConductanceWK === 0) return 0;
  const reach = lengthM * Math.sqrt(lossWM2K / sheetConductanceWK);
  return reach < 1e-6 ? 1 : Math.tanh(reach) / reach;
}
