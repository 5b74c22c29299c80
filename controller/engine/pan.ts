import type { Site } from '../../shared-types/site.ts';
import { waterDensityKgM3, waterHeatJKgK } from './water.ts';

/** Water in the full pan [L]. */
export function panVolumeL({ pan }: Site): number {
  return pan.wettedAreaM2 * pan.waterDepthM * 1000;
}

/** Heat that warms the full pan by 1 K [J/K]; the sheet, 2 % of it, is left out. */
export function panHeatJK(site: Site, waterC: number): number {
  return (panVolumeL(site) / 1000) * waterDensityKgM3(waterC) * waterHeatJKgK(waterC);
}

/** False: the pan cannot be emptied on site. */
export function canEmpty(site: Site): boolean {
  return site.drain !== 'none';
}

/** False: the pan empties as soon as the pump stops. */
export function canRest(site: Site): boolean {
  return site.drain !== 'pump-stop';
}
