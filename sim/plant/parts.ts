import type { Channel } from '../../shared-types/channels.ts';
import { panVolumeL, type Site } from '../../shared-types/site.ts';
import { waterKgL } from './water.ts';

/** What the plant needs to know of a site, in the plant's own terms. Plain numbers. */
export interface Parts {
  readonly reservoirPlumbing: boolean;
  readonly outlet: Site['outlet'];
  readonly drain: Site['drain'];
  readonly channels: readonly Channel[];
  readonly pan: {
    readonly grossAreaM2: number;
    readonly wettedAreaM2: number;
    readonly depthMm: number;
    readonly fullKg: number;
    readonly sheetJM2K: number;
    readonly contactWM2K: number;
    readonly linerWM2K: number;
  };
  readonly pump: { readonly ratedKgS: number; readonly ratedPowerW: number };
  /** Flow through the open drain while the pan is more than a film deep. */
  readonly drainKgS: number;
  readonly pipe: { readonly massKg: number; readonly lossWK: number };
  readonly store: {
    readonly startKg: number;
    readonly brimKg: number;
    readonly leastKg: number;
    readonly heightM: number;
    readonly lossWK: number;
    readonly drawnKgDay: number;
  };
  readonly reservoir: {
    readonly startKg: number;
    readonly leastKg: number;
    readonly lossWK: number;
    readonly exchangerWK: number;
    readonly heightM: number;
  };
}

export const panCells = 8;
export const storeLayers = 8;
export const pipeNodes = 3;

/**
 * Turns a site file into plant parts.
 *
 * What the file does not say is chosen here: 1 mm of steel (3846.5 J/m2K, computed), 250 W/m2K between
 * sheet and water and 1 W/m2K through the liner (from memory, middle of what seems usual), a drain
 * that empties the pan in about a quarter of an hour, 25 mm pipes 5 m longer than the height with
 * 0.25 W/mK of insulation, a quarter of the store drawn a day, and an exchanger of 60 W/K a square metre.
 */
export function partsOf(site: Site): Parts {
  const fullKg = panVolumeL(site) * waterKgL;
  const pipeM = Math.abs(site.pan.heightAboveStoreM) + 5;
  const storeKg = site.store.volumeL * waterKgL;
  return {
    reservoirPlumbing: site.plumbing === 'reservoir',
    outlet: site.outlet,
    drain: site.drain,
    channels: Object.keys(site.sensors) as Channel[],
    pan: {
      grossAreaM2: site.pan.grossAreaM2,
      wettedAreaM2: site.pan.wettedAreaM2,
      depthMm: site.pan.waterDepthM * 1000,
      fullKg,
      sheetJM2K: 3846.5,
      contactWM2K: 250,
      linerWM2K: 1,
    },
    pump: { ratedKgS: (site.pump.ratedFlowLMin / 60) * waterKgL, ratedPowerW: site.pump.ratedPowerW },
    drainKgS: fullKg / 660,
    pipe: { massKg: 0.491 * pipeM * waterKgL, lossWK: 0.25 * pipeM },
    store: {
      startKg: storeKg,
      brimKg: storeKg + site.store.headroomL * waterKgL,
      leastKg: 0.02 * storeKg,
      heightM: site.store.heightM,
      lossWK: site.store.lossWK,
      drawnKgDay: 0.25 * storeKg,
    },
    reservoir: {
      startKg: 1.15 * fullKg + 20,
      leastKg: 5,
      lossWK: 2,
      exchangerWK: 60 * site.pan.wettedAreaM2,
      heightM: 0.8,
    },
  };
}
