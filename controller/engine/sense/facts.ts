import type { Channel } from '../../../shared-types/channels.ts';
import type { TrustedReading, TrustedReadings } from '../../../shared-types/readings.ts';

/** What the readings say together. Null: it cannot be told. Temperatures [°C], differences [K]. */
export interface Facts {
  readonly panC: number | null;
  /** `panC` is what the outlet says; else the sheet stands in for it. */
  readonly panIsOutlet: boolean;
  /** The warmer and the colder end of what the pan's sensors say. */
  readonly hottestPanC: number | null;
  readonly coldestPanC: number | null;
  /** The pan's sensors that work are all good, none is doubtful. */
  readonly panIsGood: boolean;
  readonly sheetC: number | null;
  readonly storeBottomC: number | null;
  readonly hottestStoreC: number | null;
  readonly ambientC: number | null;
  /** Pan (outlet, else sheet) minus store bottom, and the sheet's (else the outlet's). */
  readonly differenceK: number | null;
  readonly sheetDifferenceK: number | null;
  /** Both readings of the difference are good, so that something may be started by it. */
  readonly differenceIsGood: boolean;
  readonly flowLMin: number | null;
  /** Only from a good level reading: a doubtful one proves nothing. */
  readonly levelMm: number | null;
  readonly failed: readonly Channel[];
  readonly allSilent: boolean;
}

/** Value of a reading that is good or doubtful. */
function usable(reading: TrustedReading | undefined): number | null {
  return reading === undefined || reading.quality === 'failed' ? null : reading.value;
}

export function good(reading: TrustedReading | undefined): number | null {
  return reading?.quality === 'good' ? reading.value : null;
}

export function factsOf(readings: TrustedReadings): Facts {
  const { panOutletC, panSheetC, panInletC } = readings;
  const outletC = usable(panOutletC);
  const sheetC = usable(panSheetC);
  const inletC = usable(panInletC);
  const storeBottomC = usable(readings.storeBottomC);
  const storeMiddleC = usable(readings.storeMiddleC);
  const storeTopC = usable(readings.storeTopC);
  const panC = outletC ?? sheetC;
  const deciding = outletC === null ? panSheetC : panOutletC;
  const { failed, allSilent } = failures(readings);
  return {
    panC,
    panIsOutlet: outletC !== null,
    hottestPanC: warmer(warmer(outletC, sheetC), inletC),
    coldestPanC: colder(colder(outletC, sheetC), inletC),
    panIsGood: !isDoubtful(panOutletC) && !isDoubtful(panSheetC) && !isDoubtful(panInletC),
    sheetC: sheetC ?? outletC,
    storeBottomC,
    hottestStoreC: warmer(warmer(storeBottomC, storeMiddleC), storeTopC),
    ambientC: usable(readings.ambientC),
    differenceK: difference(panC, storeBottomC),
    sheetDifferenceK: difference(sheetC ?? outletC, storeBottomC),
    differenceIsGood:
      deciding?.quality === 'good' && !isDoubtful(panSheetC) && readings.storeBottomC?.quality === 'good',
    flowLMin: usable(readings.flowLMin),
    levelMm: good(readings.panLevelMm),
    failed,
    allSilent,
  };
}

function isDoubtful(reading: TrustedReading | undefined): boolean {
  return reading !== undefined && reading.quality === 'doubtful';
}

const none: readonly Channel[] = [];

function failures(readings: TrustedReadings): Pick<Facts, 'failed' | 'allSilent'> {
  let failed: Channel[] | null = null;
  let all = 0;
  let silent = 0;
  for (const name in readings) {
    const channel = name as Channel;
    const reading = readings[channel];
    all++;
    if (reading?.quality !== 'failed') continue;
    failed ??= [];
    failed.push(channel);
    if (reading.cause === 'missing' || reading.cause === 'stale') silent++;
  }
  return { failed: failed ?? none, allSilent: silent === all };
}

function difference(hotC: number | null, coldC: number | null): number | null {
  return hotC === null || coldC === null ? null : hotC - coldC;
}

function warmer(aC: number | null, bC: number | null): number | null {
  return aC === null || bC === null ? (aC ?? bC) : Math.max(aC, bC);
}

function colder(aC: number | null, bC: number | null): number | null {
  return aC === null || bC === null ? (aC ?? bC) : Math.min(aC, bC);
}
