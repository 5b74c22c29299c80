import { lowPass } from '../blocks/low-pass.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { HarvestMemory } from '../state.ts';
import { clearSkyWM2, sunHeightDeg } from '../sun/position.ts';
import { updateAir } from './air-turn.ts';
import { absorbedFraction, leastLightWM2, lossWM2K, skyLossWM2 } from './collector.ts';
import { unsureW } from './net-gain.ts';
import { refillCostJ } from './refill.ts';

/** How clear a day is taken to be before it has shown itself. Design choices, as are the rest here. */
const usualClearFraction = 0.7;
/** The sky so far is remembered by daylight with this time constant, and forgotten at night [ms]. */
const skyMs = 3_600_000;
const forgetMs = 6 * 3_600_000;
/** More light than a clear sky gives comes from the edges of clouds, and does not last. */
const mostClearFraction = 1.1;
/** A dry sheet follows each cloud; what it would gain is judged by its mean over this [ms]. */
const dryMs = 400_000;
/** A sheet that is this close to its mean is under a steady sky: a clear morning warms it by 10 K an hour [K]. */
const steadyK = 2;
/** The day ahead is looked at this often, in slices of this length [ms]. */
const lookEveryMs = 60_000;
const sliceMs = 1_800_000;
const hourMs = 3_600_000;
/** A loss below this share of a refill is no gap in the sun: sensors alone can show it. */
const gapFraction = 0.1;

/** What the harvest forgets with each local day. */
export const newHarvestDay = { gaps: 0, airFellFromC: null, airCameBack: false } as const;

export const noHarvest: HarvestMemory = {
  gainW: null,
  dryC: null,
  dryTakenWM2: null,
  dryClearWM2: 0,
  drySteady: false,
  clearFraction: usualClearFraction,
  lostJ: 0,
  inGap: false,
  airMeanC: null,
  ...newHarvestDay,
  lookedMs: null,
  risingWM2: 0,
  hourJ: null,
  dayJ: null,
};

/**
 * Brings up to this step what the harvest is weighed by.
 *
 * @param gainW - Net gain of the full pan; null when it cannot be told.
 */
export function updateHarvest(situation: Situation, gainW: number | null): HarvestMemory {
  const { state, runMs } = situation;
  const before = state.harvest;
  const { dryC, dryTakenWM2, dryClearWM2, drySteady } = dryTaking(situation);
  const { lostJ, inGap, gaps } = lossOf(situation, gainW);
  const { airMeanC, airFellFromC, airCameBack } = updateAir(situation);
  const clear = clearFraction(situation, gainW);
  const fresh = before.lookedMs !== null && runMs - before.lookedMs < lookEveryMs;
  const { lookedMs, risingWM2, hourJ, dayJ } = fresh ? before : lookAhead(situation, clear);
  return {
    gainW,
    dryC,
    dryTakenWM2,
    dryClearWM2,
    drySteady,
    clearFraction: clear,
    lostJ,
    inGap,
    gaps,
    airMeanC,
    airFellFromC,
    airCameBack,
    lookedMs,
    risingWM2,
    hourJ,
    dayJ,
  };
}

type Loss = Pick<HarvestMemory, 'lostJ' | 'inGap' | 'gaps'>;

/** Heat that the full pan lost and has not gained back, and how often it has gained a real loss back today. */
function lossOf(situation: Situation, gainW: number | null): Loss {
  const { state, elapsedMs } = situation;
  const { lostJ: before, inGap: wasInGap, gaps } = state.harvest;
  if (state.water.level !== 'full') return { lostJ: 0, inGap: false, gaps };
  if (gainW === null) return state.harvest;
  const lostJ = Math.max(0, before - ((gainW + unsureW(situation)) * elapsedMs) / 1000);
  if (lostJ === 0) return { lostJ, inGap: false, gaps: wasInGap ? gaps + 1 : gaps };
  return { lostJ, inGap: wasInGap || lostJ >= gapFraction * refillCostJ(situation), gaps };
}

/** How clear the sky was so far, 0 to 1 and a little; at night it goes back to what is usual. */
function clearFraction(situation: Situation, gainW: number | null): number {
  const { state, sunHeightDeg: height, elapsedMs } = situation;
  const before = state.harvest.clearFraction;
  const clearWM2 = clearSkyWM2(height ?? 0);
  if (clearWM2 < leastLightWM2) return lowPass(before, usualClearFraction, elapsedMs, forgetMs);
  const lightWM2 = lightOf(situation, gainW);
  if (lightWM2 === null) return before;
  const now = Math.min(mostClearFraction, Math.max(0, lightWM2 / clearWM2));
  return lowPass(before, now, elapsedMs, skyMs);
}

type Dry = Pick<HarvestMemory, 'dryC' | 'dryTakenWM2' | 'dryClearWM2' | 'drySteady'>;

/** The mean of the dry sheet, what it takes in, and what a clear sky gives; the latter are kept while the pan is full. */
function dryTaking(situation: Situation): Dry {
  const { state, facts, readings, sunHeightDeg: height, elapsedMs } = situation;
  const { sheetC } = facts;
  const { dryC: beforeC, dryTakenWM2, dryClearWM2, drySteady } = state.harvest;
  if (state.water.level !== 'empty' || sheetC === null)
    return { dryC: null, dryTakenWM2, dryClearWM2, drySteady };
  const dryC = lowPass(beforeC, sheetC, elapsedMs, dryMs);
  const airC = good(readings.ambientC);
  return {
    dryC,
    dryTakenWM2: airC === null ? null : lossWM2K(situation) * (dryC - airC) + skyLossWM2,
    dryClearWM2: clearSkyWM2(height ?? 0),
    drySteady: Math.abs(sheetC - dryC) <= steadyK,
  };
}

/** Light on the pan as a sensor sees it, or as the pan itself shows it [W/m2]. */
function lightOf(situation: Situation, gainW: number | null): number | null {
  const { readings, facts, state, site } = situation;
  const measured = good(readings.irradianceWM2);
  if (measured !== null) return measured;
  const airC = good(readings.ambientC);
  if (airC === null) return null;
  const dry = state.water.level === 'empty';
  const warmC = dry ? facts.sheetC : facts.panC;
  const takenW = dry ? 0 : gainW;
  if (warmC === null || takenW === null) return null;
  const takenWM2 = takenW / site.pan.grossAreaM2;
  return (takenWM2 + lossWM2K(situation) * (warmC - airC) + skyLossWM2) / absorbedFraction;
}

type Ahead = Pick<HarvestMemory, 'lookedMs' | 'risingWM2' | 'hourJ' | 'dayJ'>;

/**
 * Heat that a pan at the temperature of the store bottom may gain in the coming hour and until sunset, if the
 * day goes on as clear as it was [J]. Null where calendar or store are not known.
 */
function lookAhead(situation: Situation, clear: number): Ahead {
  const { state, facts, readings, site, runMs: lookedMs } = situation;
  const { atMs } = state.sunClock;
  const { storeBottomC } = facts;
  if (atMs === null || storeBottomC === null) return { lookedMs, risingWM2: 0, hourJ: null, dayJ: null };
  // Without a sensor the air is taken to be as warm as the store: then the day promises too much, not too little.
  const aboveAirK = storeBottomC - (good(readings.ambientC) ?? storeBottomC);
  const lossWM2 = lossWM2K(situation) * aboveAirK + skyLossWM2;
  const clearAt = (utcMs: number) => clearSkyWM2(sunHeightDeg(utcMs, site.location));
  let hourJ = 0;
  let dayJ = 0;
  for (let aheadMs = 0; aheadMs < 24 * hourMs; aheadMs += sliceMs) {
    const height = sunHeightDeg(atMs + aheadMs + sliceMs / 2, site.location);
    if (height <= 0) break;
    const gainWM2 = absorbedFraction * clear * clearSkyWM2(height) - lossWM2;
    const gainJ = (Math.max(0, gainWM2) * site.pan.grossAreaM2 * sliceMs) / 1000;
    dayJ += gainJ;
    if (aheadMs < hourMs) hourJ += gainJ;
  }
  const risingWM2 = clearAt(atMs + hourMs / 2) - clearAt(atMs);
  return { lookedMs, risingWM2, hourJ, dayJ };
}
