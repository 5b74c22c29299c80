import { panVolumeL } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { clearSkyWM2 } from '../sun/position.ts';
import type { FlowBound } from './memory.ts';
import { fullFlowLMin } from './pump-signs.ts';

/** Heat that one litre a minute carries for each kelvin [W/K]: 998.2 kg/m3 times 4184 J/kgK. */
export const carriedWKPerLMin = (998.2 * 4184) / 60_000;
/** Flow that heat alone is held to, over the full flow: less of it is not told from none; a design choice. */
const leastHeatFlowFraction = 0.6;
/** The worst contact between sheet and moving water that is not yet called none [W/m2K]; a design choice. */
const leastContactWM2K = 120;
/** What two thermometers may disagree by [K]: 1.0 to 1.2 K in cheap pairs, and a margin. */
const sensorsK = 2;
/** Sun beyond the clear sky: between bright clouds for minutes, and scatter [times, W/m2]; design choices. */
const cloudEdgeTimes = 1.25;
const scatterWM2 = 100;
/** The most sun where no calendar was heard [W/m2]. */
const mostSunWM2 = 1200;
/** Thresholds are met alike by every JavaScript engine when the sun is rounded to this [W/m2]. */
const stepWM2 = 10;
/** The most that a wind brings from warmer air [W/m2K], and the air where nothing measures it [°C]. */
const mostAirWM2K = 35;
const unknownAirC = 35;

/** Flow that the pump should move at the speed in force [L/min]. */
export function healthyFlowLMin({ state, site }: Situation): number {
  return fullFlowLMin(site, state.learnt) * state.outputs.pumpFraction;
}

/** Time in which that flow moves the water of the pan once [ms]. */
export function turnoverMs(situation: Situation): number {
  return (panVolumeL(situation.site) * 60_000) / healthyFlowLMin(situation);
}

/** Temperature of the water that the pump draws [°C]. */
export function sourceC({ readings, site }: Situation): number | null {
  return good(site.plumbing === 'reservoir' ? readings.reservoirC : readings.storeBottomC);
}

/** The most sun that may fall on the sheet now [W/m2]. */
function sunNowWM2({ readings, sunHeightDeg }: Situation): number {
  const measuredWM2 = good(readings.irradianceWM2);
  if (measuredWM2 !== null) return Math.max(0, measuredWM2);
  if (sunHeightDeg === null) return mostSunWM2;
  const clearWM2 = cloudEdgeTimes * clearSkyWM2(sunHeightDeg) + scatterWM2;
  return Math.min(mostSunWM2, Math.round(clearWM2 / stepWM2) * stepWM2);
}

/**
 * Carries the warmest source and the strongest sun of the last one or two stretches, each the time that slow
 * water takes through the pan: what leaves it now came in and was warmed within them. Null while the source is
 * not known.
 */
export function updateBound(before: FlowBound | null, situation: Situation): FlowBound | null {
  const nowC = sourceC(situation);
  if (nowC === null) return null;
  const { runMs } = situation;
  const nowWM2 = sunNowWM2(situation);
  if (before === null)
    return { sinceMs: runMs, sourceC: nowC, sunWM2: nowWM2, sourceBeforeC: nowC, sunBeforeWM2: nowWM2 };
  if (runMs - before.sinceMs >= turnoverMs(situation) / leastHeatFlowFraction)
    return {
      sinceMs: runMs,
      sourceC: nowC,
      sunWM2: nowWM2,
      sourceBeforeC: before.sourceC,
      sunBeforeWM2: before.sunWM2,
    };
  return nowC > before.sourceC || nowWM2 > before.sunWM2
    ? { ...before, sourceC: Math.max(nowC, before.sourceC), sunWM2: Math.max(nowWM2, before.sunWM2) }
    : before;
}

/**
 * How far outlet or sheet may stand above the source while water moves [K], under all the sun there was.
 *
 * Water that passes takes all its heat along, so that no outlet is warmer than its source by more than heat over
 * flow; the sheet in the middle has half of that, and what it takes to pass the heat on. Energy balance; the
 * numbers in it are design choices.
 */
function mostExcessK(at: 'outlet' | 'sheet', bound: FlowBound, situation: Situation): number {
  const { readings, site } = situation;
  const airC = good(readings.ambientC) ?? unknownAirC;
  const sourceC = Math.max(bound.sourceC, bound.sourceBeforeC);
  const heatWM2 = Math.max(bound.sunWM2, bound.sunBeforeWM2) + mostAirWM2K * Math.max(0, airC - sourceC);
  const carriedWK = leastHeatFlowFraction * carriedWKPerLMin * healthyFlowLMin(situation);
  const riseK = (heatWM2 * site.pan.grossAreaM2) / carriedWK;
  return sensorsK + (at === 'outlet' ? riseK : riseK / 2 + heatWM2 / leastContactWM2K);
}

/** How far the pan stands above its source [K]; null where it cannot be told. */
export function excessK(situation: Situation): number | null {
  const { readings } = situation;
  const panC = good(readings.panOutletC) ?? good(readings.panSheetC);
  const fromC = sourceC(situation);
  return panC === null || fromC === null ? null : panC - fromC;
}

/** True when every good thermometer of the pan stands higher than moving water lets it. */
export function isTooHotForFlow(bound: FlowBound, situation: Situation): boolean {
  const { readings } = situation;
  const sourceC = Math.max(bound.sourceC, bound.sourceBeforeC);
  const outletC = good(readings.panOutletC);
  const sheetC = good(readings.panSheetC);
  if (outletC === null && sheetC === null) return false;
  return (
    (outletC === null || outletC - sourceC > mostExcessK('outlet', bound, situation)) &&
    (sheetC === null || sheetC - sourceC > mostExcessK('sheet', bound, situation))
  );
}
