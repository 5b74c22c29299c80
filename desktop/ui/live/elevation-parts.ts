import { panVolumeL, type Site } from '../../../shared-types/site.ts';

/** Sizes of a loop as a side view needs them [m]. */
export interface LoopSizes {
  readonly panLengthM: number;
  readonly wallHeightM: number;
  readonly waterDepthM: number;
  /** Difference in height between the two ends of the pan's floor. */
  readonly fallM: number;
  readonly panAboveStoreM: number;
  readonly storeHeightM: number;
  readonly storeWidthM: number;
  /** Vessel beside the store that takes the pan's water; undefined where the store itself does. */
  readonly reservoir?: { readonly heightM: number; readonly widthM: number } | undefined;
}

/** The site file names no lengths: pan and store are drawn as if square in plan. */
export function loopSizes(site: Site): LoopSizes {
  const panLengthM = Math.sqrt(site.pan.grossAreaM2);
  const storeM3 = (site.store.volumeL + site.store.headroomL) / 1000;
  return {
    panLengthM,
    wallHeightM: Math.max(site.pan.wallHeightM, site.pan.waterDepthM),
    waterDepthM: site.pan.waterDepthM,
    fallM: site.pan.fallFraction * panLengthM,
    panAboveStoreM: site.pan.heightAboveStoreM,
    storeHeightM: site.store.heightM,
    storeWidthM: Math.sqrt(storeM3 / site.store.heightM),
    reservoir: site.plumbing === 'reservoir' ? reservoirSizes(site) : undefined,
  };
}

/** The site file does not size a reservoir: one is drawn that holds the pan's water and a quarter more. */
const reservoirRoomFraction = 1.25;

function reservoirSizes(site: Site) {
  const heightM = Math.min(1, site.store.heightM);
  const volumeM3 = (reservoirRoomFraction * panVolumeL(site)) / 1000;
  return { heightM, widthM: Math.sqrt(volumeM3 / heightM) };
}

/** How full the reservoir is drawn, 0 to 1: it holds what the pan does not, and a little that stays. */
export function reservoirFill(pan: keyof typeof panFill): number {
  return 0.9 - panFill[pan] / reservoirRoomFraction;
}

/** How full the pan is drawn, 0 to 1. Where it is not known, it is drawn full and said not to be known. */
export const panFill = { empty: 0, part: 0.5, full: 1, unknown: 1 } as const;

/**
 * How full the store is drawn, 0 to 1: by its level sensor, else by where the pan's water must be.
 *
 * @param levelMm - Trusted reading of the store's level, if there is one.
 */
export function storeFill(site: Site, pan: keyof typeof panFill, levelMm: number | undefined): number {
  if (levelMm !== undefined) return Math.min(1, Math.max(0, levelMm / 1000 / site.store.heightM));
  const { volumeL, headroomL } = site.store;
  const inPanL = site.plumbing === 'open-store' ? panFill[pan] * panVolumeL(site) : 0;
  return Math.min(1, Math.max(0, (volumeL - inPanL) / (volumeL + headroomL)));
}
