import type { Channel } from '../../../shared-types/channels.ts';
import type { Site } from '../../../shared-types/site.ts';
import { panHeatJK } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';
import { trendKS } from '../want/trend.ts';
import { waterDensityKgM3, waterHeatJKgK } from '../water.ts';
import { endsOffsetSdK } from './ends-offset.ts';

/**
 * From sheet to flowing water below it [W/m2K]: between 100 and 300 from memory; the middle is a design choice.
 */
const contactWM2K = 200;

/** Where the pan's water comes from. Behind an exchanger the store bottom is another water's temperature. */
export function sourceOf({ plumbing }: Site): Channel {
  return plumbing === 'reservoir' ? 'reservoirC' : 'storeBottomC';
}

/** Water into the pan and out of it [°C]; null where it cannot be told. */
export interface Ends {
  readonly coldC: number | null;
  readonly hotC: number | null;
  /** The outlet is not measured but follows from the sheet. */
  readonly estimated: boolean;
}

/** Temperatures at both ends of the pan while water flows through it; only good readings count. */
export function endsOf(situation: Situation, flowLMin: number): Ends {
  const { readings, site, state } = situation;
  const { panOutletC, panInletC } = readings;
  const inletC = good(panInletC);
  const outletC = good(panOutletC);
  const coldC = inletC ?? good(readings[sourceOf(site)]);
  if (outletC === null) {
    // The sheet stands in for a sensor that is not fitted, never for one that failed.
    const guess = site.sensors.panOutletC === undefined && coldC !== null;
    return { coldC, hotC: guess ? fromSheetC(situation, coldC, flowLMin) : null, estimated: guess };
  }
  const { offsetK } = endsPair(site, state.learnt, inletC !== null);
  return { coldC, hotC: outletC - offsetK, estimated: false };
}

/** What the outlet shows more than the cold end when both are alike; the deviation is null where nobody knows [K]. */
export function endsPair(
  { plumbing }: Site,
  learnt: EngineState['learnt'],
  hasInlet: boolean,
): { readonly offsetK: number; readonly sdK: number | null } {
  if (hasInlet) {
    const { endsOffsetK } = learnt;
    return endsOffsetK === undefined ? unknownPair : { offsetK: endsOffsetK, sdK: endsOffsetSdK };
  }
  const { outletOffsetK, outletOffsetSdK } = learnt;
  if (plumbing === 'reservoir' || outletOffsetK === undefined || outletOffsetSdK === undefined)
    return unknownPair;
  return { offsetK: outletOffsetK, sdK: outletOffsetSdK };
}

const unknownPair = { offsetK: 0, sdK: null } as const;

/**
 * Outlet by the sheet over the middle of the pan [°C]. Water warms evenly on its way, so that it is half-way
 * there; the sheet is warmer by what passes the heat on, both to the stream and to the water that stays.
 */
function fromSheetC(situation: Situation, coldC: number, flowLMin: number): number | null {
  const { readings, site } = situation;
  const sheetC = good(readings.panSheetC);
  if (sheetC === null) return null;
  const contactWK = contactWM2K * site.pan.wettedAreaM2;
  const streamWK = (flowLMin / 60_000) * waterDensityKgM3(coldC) * waterHeatJKgK(coldC);
  const storedW = panHeatJK(site, coldC) * (trendKS(situation) ?? 0);
  return coldC + (sheetC - coldC - storedW / contactWK) / (0.5 + streamWK / contactWK);
}
