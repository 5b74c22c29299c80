import type { Channel } from '../../../shared-types/channels.ts';
import type { TrustedReading, TrustedReadings } from '../../../shared-types/readings.ts';
import { pairOffset } from '../pair/uncertainty.ts';
import type { EngineState } from '../state.ts';
import { isDoubted } from './doubt/apply.ts';

/** What the readings say together. Null: it cannot be told. Temperatures [°C], differences [K]. */
export interface Facts {
  readonly panC: number | null;
  /** `panC` is what the outlet says; else the sheet stands in for it. */
  readonly panIsOutlet: boolean;
  /** The warmer and the colder end of what the pan's sensors say. */
  readonly hottestPanC: number | null;
  readonly coldestPanC: number | null;
  /**
   * A pan sensor is good and none is doubtful for the moment. One that is in doubt for longer still counts in the
   * hottest and the coldest, so that it can only tighten what they protect from.
   */
  readonly panIsGood: boolean;
  readonly sheetC: number | null;
  readonly storeBottomC: number | null;
  readonly hottestStoreC: number | null;
  readonly ambientC: number | null;
  /**
   * Pan (outlet, else sheet) minus store bottom, and the sheet's (else the outlet's). A sensor that is in doubt for
   * longer than a moment is passed over where the other is not. What was learnt of the pair is taken off.
   */
  readonly differenceK: number | null;
  readonly sheetDifferenceK: number | null;
  /** Both readings of the difference are good, so that something may be started by it. */
  readonly differenceIsGood: boolean;
  /** One of them is in doubt for longer than a moment, and no other sensor stands in for it. */
  readonly differenceIsDoubted: boolean;
  readonly flowLMin: number | null;
  /** Only from a good level reading: a doubtful one proves nothing. */
  readonly levelMm: number | null;
  readonly failed: readonly Channel[];
  readonly allSilent: boolean;
}

/** Value of a reading that is good or doubtful. */
export function usable(reading: TrustedReading | undefined): number | null {
  return reading === undefined || reading.quality === 'failed' ? null : reading.value;
}

export function good(reading: TrustedReading | undefined): number | null {
  return reading?.quality === 'good' ? reading.value : null;
}

/** @param learnt - The offset of the pair is taken from it. */
export function factsOf(readings: TrustedReadings, learnt: EngineState['learnt']): Facts {
  const { panOutletC, panSheetC, panInletC } = readings;
  const outletC = usable(panOutletC);
  const sheetC = usable(panSheetC);
  const inletC = usable(panInletC);
  const storeBottomC = usable(readings.storeBottomC);
  const storeMiddleC = usable(readings.storeMiddleC);
  const storeTopC = usable(readings.storeTopC);
  const panIsOutlet = comesFirst(panOutletC, panSheetC);
  const deciding = panIsOutlet ? panOutletC : panSheetC;
  const filling = comesFirst(panSheetC, panOutletC) ? panSheetC : panOutletC;
  const panC = usable(deciding);
  const fillC = usable(filling);
  const { failed, allSilent } = failures(readings);
  return {
    panC,
    panIsOutlet,
    hottestPanC: warmer(warmer(outletC, sheetC), inletC),
    coldestPanC: colder(colder(outletC, sheetC), inletC),
    panIsGood:
      (isGood(panOutletC) || isGood(panSheetC) || isGood(panInletC)) &&
      !isUnsure(panOutletC) &&
      !isUnsure(panSheetC) &&
      !isUnsure(panInletC),
    sheetC: fillC,
    storeBottomC,
    hottestStoreC: warmer(warmer(storeBottomC, storeMiddleC), storeTopC),
    ambientC: usable(readings.ambientC),
    differenceK: difference(panC, storeBottomC, panIsOutlet ? pairOffset(learnt).offsetK : 0),
    sheetDifferenceK: difference(fillC, storeBottomC, 0),
    differenceIsGood: isGood(deciding) && !isUnsure(panSheetC) && isGood(readings.storeBottomC),
    differenceIsDoubted: isDoubted(deciding) || isDoubted(readings.storeBottomC),
    flowLMin: usable(readings.flowLMin),
    levelMm: good(readings.panLevelMm),
    failed,
    allSilent,
  };
}

function isGood(reading: TrustedReading | undefined): boolean {
  return reading?.quality === 'good';
}

/** Doubtful for the moment. */
function isUnsure(reading: TrustedReading | undefined): boolean {
  return reading?.quality === 'doubtful' && !isDoubted(reading);
}

/** True when the first of two pan sensors is the one to go by: it works, and is in no doubt that the other is free of. */
function comesFirst(first: TrustedReading | undefined, second: TrustedReading | undefined): boolean {
  if (usable(first) === null) return false;
  return usable(second) === null || !isDoubted(first) || isDoubted(second);
}

const none: readonly Channel[] = [];

function failures(readings: TrustedReadings): Pick<Facts, 'failed' | 'allSilent'> {
  let failed: Channel[] | null = null;
  let all = 0;
  let silent = 0;
  for (const name in readings) {
    const channel = name as Channel;
    const reading = readings[channel] as TrustedReading;
    all++;
    if (reading.quality !== 'failed') continue;
    failed ??= [];
    failed.push(channel);
    if (reading.cause === 'missing' || reading.cause === 'stale') silent++;
  }
  return { failed: failed ?? none, allSilent: silent === all };
}

function difference(hotC: number | null, coldC: number | null, offsetK: number): number | null {
  return hotC === null || coldC === null ? null : hotC - coldC - offsetK;
}

function warmer(aC: number | null, bC: number | null): number | null {
  return aC === null || bC === null ? (aC ?? bC) : Math.max(aC, bC);
}

function colder(aC: number | null, bC: number | null): number | null {
  return aC === null || bC === null ? (aC ?? bC) : Math.min(aC, bC);
}
