import type { Channel } from '../../../shared-types/channels.ts';
import type { TrustedReading, TrustedReadings } from '../../../shared-types/readings.ts';

/** What the readings say together. Null: it cannot be told. Temperatures [°C], differences [K]. */
export interface Facts {
  readonly panC: number | null;
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
  readonly allFailed: boolean;
  readonly allSilent: boolean;
}

const panChannels = ['panOutletC', 'panSheetC', 'panInletC'] as const;
const storeChannels = ['storeBottomC', 'storeMiddleC', 'storeTopC'] as const;

/** Value of a reading that is good or doubtful. */
function usable(reading: TrustedReading | undefined): number | null {
  return reading === undefined || reading.quality === 'failed' ? null : reading.value;
}

export function good(reading: TrustedReading | undefined): number | null {
  return reading?.quality === 'good' ? reading.value : null;
}

export function factsOf(readings: TrustedReadings): Facts {
  const outletC = usable(readings.panOutletC);
  const sheetC = usable(readings.panSheetC);
  const storeBottomC = usable(readings.storeBottomC);
  const pan = panChannels.map((channel) => readings[channel]);
  const panC = outletC ?? sheetC;
  const deciding = outletC === null ? readings.panSheetC : readings.panOutletC;
  return {
    panC,
    hottestPanC: extreme(pan, Math.max),
    coldestPanC: extreme(pan, Math.min),
    panIsGood: pan.every((reading) => reading?.quality !== 'doubtful'),
    sheetC: sheetC ?? outletC,
    storeBottomC,
    hottestStoreC: extreme(
      storeChannels.map((channel) => readings[channel]),
      Math.max,
    ),
    ambientC: usable(readings.ambientC),
    differenceK: difference(panC, storeBottomC),
    sheetDifferenceK: difference(sheetC ?? outletC, storeBottomC),
    differenceIsGood:
      deciding?.quality === 'good' &&
      readings.panSheetC?.quality !== 'doubtful' &&
      readings.storeBottomC?.quality === 'good',
    flowLMin: usable(readings.flowLMin),
    levelMm: good(readings.panLevelMm),
    ...failures(readings),
  };
}

function failures(readings: TrustedReadings): Pick<Facts, 'failed' | 'allFailed' | 'allSilent'> {
  const failed: Channel[] = [];
  let all = 0;
  let silent = 0;
  for (const [channel, reading] of Object.entries(readings)) {
    all++;
    if (reading.quality !== 'failed') continue;
    failed.push(channel as Channel);
    if (reading.cause === 'missing' || reading.cause === 'stale') silent++;
  }
  return { failed, allFailed: failed.length === all, allSilent: silent === all };
}

function difference(hotC: number | null, coldC: number | null): number | null {
  return hotC === null || coldC === null ? null : hotC - coldC;
}

function extreme(
  readings: readonly (TrustedReading | undefined)[],
  pick: (a: number, b: number) => number,
): number | null {
  let result: number | null = null;
  for (const reading of readings) {
    const value = usable(reading);
    if (value !== null) result = result === null ? value : pick(result, value);
  }
  return result;
}
