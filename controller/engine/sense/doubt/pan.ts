import type { Channel } from '../../../../shared-types/channels.ts';
import type { Situation } from '../../situation.ts';
import { agree, type Comparison, saidBy } from './comparison.ts';

/** Long enough after sunset and emptying for a dry pan to follow the air [ms]; a design choice. */
const settledMs = 2 * 3_600_000;
/**
 * How far a dry pan at night may stand above the air and below it [K], sensors included. Dew keeps a sheet from
 * falling far; published net radiation of clear nights, 40 to 80 W/m2, takes a still plate some 10 K down.
 */
const nightAboveK = 3;
const nightBelowK = 14;
/** Pan sensors that agree to this with each other outvote the air [K]; a design choice. */
const togetherK = 4;

const panChannels: readonly Channel[] = ['panOutletC', 'panSheetC', 'panInletC'];

/** Before sunrise an empty pan follows the air, somewhat below it. */
export const panAtNight: Comparison = {
  name: 'pan-at-night',
  looks: 60,
  looksToClear: 240,
  judge: (situation, darkMs) => {
    const { facts, readings, state, runMs } = situation;
    const { ambientC } = facts;
    const { phase, water } = state;
    if ((darkMs ?? 0) < settledMs || ambientC === null) return null;
    if (phase.name !== 'empty' || water.level !== 'empty' || runMs - phase.sinceMs < settledMs) return null;
    const known = panChannels.flatMap((channel) => {
      const valueC = saidBy(readings, channel);
      return valueC === null ? [] : [{ channel, aboveK: valueC - ambientC }];
    });
    const wrong = known.filter(({ aboveK }) => aboveK > nightAboveK || aboveK < -nightBelowK);
    if (wrong.length === 0) return agree;
    const heights = known.map(({ aboveK }) => aboveK);
    const spreadK = Math.max(...heights) - Math.min(...heights);
    if (wrong.length === known.length)
      return known.length > 1 && spreadK <= togetherK
        ? ['ambientC']
        : [...wrong.map(({ channel }) => channel), 'ambientC'];
    return withSwapped(
      wrong.map(({ channel }) => channel),
      situation,
      ambientC,
    );
  },
};

/** A store that is as cold as a dry pan, while a pan sensor is as warm as a store: they may be swapped. */
function withSwapped(wrong: readonly Channel[], { facts }: Situation, ambientC: number): readonly Channel[] {
  const { storeBottomC } = facts;
  if (storeBottomC === null || storeBottomC > ambientC + nightAboveK) return wrong;
  return [...wrong, 'storeBottomC'];
}

/** Long enough for a pan that was filled, or that came to rest, to be one water [ms]; a design choice. */
const oneWaterMs = 900_000;
/**
 * How far a sheet stands off the outlet of a full pan at most [K]: below, since the water warms on its way;
 * above, by the heat that passes from sheet to water, and by air below the sheet.
 */
const sheetBelowK = 8;
const sheetAboveK = 15;
/** A sensor has fallen off when it stands this share or less of the other's way from the air. */
const fallenFraction = 0.35;

/** The sheet of a full pan is about as warm as its water. */
export const sheetOutlet: Comparison = {
  name: 'sheet-outlet',
  looks: 15,
  looksToClear: 600,
  judge: (situation) => {
    const { readings, state, runMs } = situation;
    const { phase, water } = state;
    const outletC = saidBy(readings, 'panOutletC');
    const sheetC = saidBy(readings, 'panSheetC');
    if (outletC === null || sheetC === null || water.level !== 'full') return null;
    if (phase.name !== 'circulating' && phase.name !== 'resting') return null;
    if (runMs - phase.sinceMs < oneWaterMs) return null;
    const aboveK = sheetC - outletC;
    if (aboveK >= -sheetBelowK && aboveK <= sheetAboveK) return agree;
    return wrongOfPan(situation, outletC, sheetC);
  },
};

function wrongOfPan({ facts }: Situation, outletC: number, sheetC: number): readonly Channel[] {
  const { ambientC, storeBottomC } = facts;
  if (ambientC !== null) {
    if (isFallen(sheetC, outletC, ambientC)) return ['panSheetC'];
    if (isFallen(outletC, sheetC, ambientC)) return ['panOutletC'];
  }
  // A "store" that goes with the sheet is the water of the pan.
  const swapped = storeBottomC !== null && Math.abs(storeBottomC - sheetC) <= togetherK;
  return swapped ? ['panOutletC', 'storeBottomC'] : ['panOutletC', 'panSheetC'];
}

function isFallen(valueC: number, otherC: number, airC: number): boolean {
  return Math.abs(valueC - airC) <= fallenFraction * Math.abs(otherC - airC);
}
