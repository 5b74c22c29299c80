import type { PipeOut } from './pipes.ts';
import type { PlantState } from './state.ts';
import { waterJKgK } from './water.ts';

/**
 * Lets water of the return pass the radiator of the heat dump, on its way home.
 *
 * Its effectiveness is 1 - exp(-NTU), the air being one body of endless capacity (textbook).
 *
 * @param airC - The radiator stands in the shade outside. It makes no ice: in a frost it cools to 0 °C at most.
 * @returns Mass times temperature of the water afterwards [kg °C].
 */
export function cooledKgC(
  { parts }: PlantState,
  { massKg, massKgC }: PipeOut,
  airC: number,
  dtS: number,
): number {
  if (massKg === 0 || parts.heatDump === undefined) return massKgC;
  const { conductanceWK } = parts.heatDump;
  const effectiveness = -Math.expm1((-conductanceWK * dtS) / (massKg * waterJKgK));
  return massKgC - effectiveness * (massKgC - massKg * Math.max(0, airC));
}
