import type { ReasonCode } from '../../../shared-types/reasons.ts';
import { assertNever } from '../assert-never.ts';
import { heldFor } from '../blocks/hold.ts';
import { known, type Values } from '../known.ts';
import { canEmpty, canRest } from '../pan.ts';
import type { Command, Goal, Situation } from '../situation.ts';
import type { Phase } from '../state.ts';
import { turnedByK } from './air-turn.ts';
import { batchWarms, wayHome } from './batch.ts';
import { absorbedFraction, dryGainW } from './collector.ts';
import { wantInDoubt } from './doubt.ts';
import { fillCostJ, fillsToday, leastEmptyMin, refillCostJ } from './refill.ts';
import { differencesOf, isLosing, needsFill, settlingMs } from './timers.ts';

/** From this much below the store on, and for so long, a circulation takes heat out of it. Design choices. */
const takesHeatK = 1;
const takesHeatS = 120;

/** What the loop itself would do now for the sake of heat. */
export function want(situation: Situation): Command {
  return wantInDoubt(situation) ?? wantForHeat(situation);
}

function wantForHeat(situation: Situation): Command {
  const { phase } = situation.state;
  switch (phase.name) {
    case 'empty':
    case 'resting':
      return needsFill(situation) ? wantFill(situation) : wantFromRest(situation);
    case 'filling':
      return command('run', 'filling-for-heat', {
        filledS: (situation.runMs - phase.sinceMs) / 1000,
        fillTimeS: situation.settings.fillTimeS,
      });
    case 'circulating':
      return wantFromCirculation(situation, phase);
    case 'emptying':
    case 'stopped':
      // Both end by their own proofs; this is what the pan waits for once they have.
      return command('rest', 'waiting-start-difference', differences(situation));
    default:
      return assertNever(phase);
  }
}

function command(goal: Goal, code: ReasonCode, values: Values): Command {
  return { goal, cause: { code, values }, urgent: false, by: 'want' };
}

function differences(situation: Situation): Values {
  const { differenceK } = situation.facts;
  const { startDifferenceK, stopDifferenceK } = differencesOf(situation);
  return differenceK === null
    ? { startDifferenceK, stopDifferenceK }
    : { differenceK, startDifferenceK, stopDifferenceK };
}

function wantFill(situation: Situation): Command {
  const { state, facts, settings, runMs } = situation;
  const { timers, phase } = state;
  const { fillDifferenceK, fillDelayS, fillsPerDay } = settings;
  const { sheetDifferenceK } = facts;
  const values = known({ differenceK: sheetDifferenceK, fillDifferenceK });
  const stay = phase.name === 'resting' ? 'rest' : 'empty';
  if ((sheetDifferenceK ?? 0) <= 0) return command(stay, 'waiting-for-sun', values);
  if (timers.fillMs === null) return command(stay, 'waiting-fill-difference', values);
  const fills = fillsToday(situation);
  if (fills >= fillsPerDay) return command(stay, 'waiting-fills-per-day', { fills, fillsPerDay });
  const emptyMin = (runMs - phase.sinceMs) / 60_000;
  if (phase.name === 'empty' && phase.afterNoGain && emptyMin < leastEmptyMin)
    return command(stay, 'waiting-after-emptying', { emptyMin, leastEmptyMin });
  const heldS = (runMs - timers.fillMs) / 1000;
  if (!heldFor(timers.fillMs, runMs, fillDelayS * 1000) || !facts.differenceIsGood)
    return command(stay, 'waiting-fill-delay', { ...values, heldS, fillDelayS });
  const unpaid = unpaidFill(situation);
  return unpaid === null
    ? command('run', 'filling-for-heat', values)
    : command(stay, 'waiting-worth-filling', unpaid);
}

/** The numbers of a fill that would not pay, else null. */
function unpaidFill(situation: Situation): Values | null {
  const { hourJ, clearFraction, risingWM2 } = situation.state.harvest;
  const costJ = fillCostJ(situation);
  // The coming hour is what the sheet shows now and how the sun moves, or what the day so far lets expect.
  const risingW = absorbedFraction * clearFraction * risingWM2 * situation.site.pan.grossAreaM2;
  const nowJ = 3600 * ((dryGainW(situation) ?? 0) + risingW);
  const comingJ = Math.max(nowJ, hourJ ?? 0);
  return comingJ < costJ ? { comingKWh: kWh(Math.max(0, comingJ)), costKWh: kWh(costJ) } : null;
}

type Circulating = Extract<Phase, { readonly name: 'circulating' }>;

function wantFromCirculation(situation: Situation, phase: Circulating): Command {
  const { state, site, runMs } = situation;
  const { timers } = state;
  const values = differences(situation);
  const closesAfterS = stopDelayS(situation);
  const closed = heldFor(timers.stopMs, runMs, closesAfterS * 1000);
  const losing = isLosing(situation);
  const gap = closed || losing ? gapValues(situation) : null;
  if (losing && gap === null && canEmpty(site)) return emptyInGap(situation, values);
  if (closed && canRest(site)) return command('rest', 'resting-no-gain', values);
  if (gap !== null && !canRest(site)) return command('run', 'circulating-through-gap', gap);
  if (closed) return emptyInGap(situation, values);
  if (timers.stopMs !== null)
    return command('run', 'waiting-stop-delay', {
      ...values,
      heldS: (runMs - timers.stopMs) / 1000,
      stopDelayS: closesAfterS,
    });
  const leftS = (phase.sinceMs + settlingMs(situation) - runMs) / 1000;
  if (leftS > 0) return command('run', 'circulating-least-on', { leftS });
  return phase.afterFill && batchWarms(situation)
    ? warmingBatch(situation)
    : command('run', 'circulating-for-heat', values);
}

function warmingBatch({ facts: { panC }, settings: { batchTemperatureC } }: Situation): Command {
  return command('rest', 'warming-batch', known({ panC, batchTemperatureC }));
}

/** A pan that is clearly colder than the store takes heat from it: that is not waited for [s]. */
function stopDelayS({ facts, settings }: Situation): number {
  const takes = (facts.differenceK ?? 0) < -takesHeatK;
  return takes ? Math.min(takesHeatS, settings.stopDelayS) : settings.stopDelayS;
}

function wantFromRest(situation: Situation): Command {
  const { state, facts, site, settings, runMs } = situation;
  const { timers, gain } = state;
  const values = differences(situation);
  if (heldFor(timers.startMs, runMs, settings.startDelayS * 1000) && facts.differenceIsGood)
    return command(...wayHome(situation), values);
  if (timers.startMs !== null)
    return command('rest', 'waiting-start-delay', {
      heldS: (runMs - timers.startMs) / 1000,
      startDelayS: settings.startDelayS,
    });
  const idleMin = gain === null ? 0 : (runMs - gain.sinceMs) / 60_000;
  const idle = { ...values, idleMin, emptyAfterMin: settings.emptyAfterMin };
  if (canEmpty(site)) {
    if (isLosing(situation)) {
      const hold = gapValues(situation);
      return hold === null ? emptyInGap(situation, idle) : command('rest', 'resting-through-gap', hold);
    }
    if (idleMin >= settings.emptyAfterMin)
      return coolsStore(situation)
        ? command('rest', 'resting-colder-than-store', idle)
        : command('empty', 'emptying-no-gain', idle);
  }
  if (batchWarms(situation) && idleMin < settings.emptyAfterMin / 2) return warmingBatch(situation);
  return idleMin < settings.emptyAfterMin / 2
    ? command('rest', 'waiting-start-difference', values)
    : command('rest', 'resting-no-gain', idle);
}

/** Empties a pan that loses heat; where the air alone keeps it from waiting, that is why. */
function emptyInGap(situation: Situation, values: Values): Command {
  const airFellK = paysWaiting(situation) ? turnedByK(situation) : null;
  return command('empty', 'emptying-no-gain', airFellK === null ? values : { ...values, airFellK });
}

/**
 * True while it may pay to wait for the sun with a full pan.
 *
 * Nobody knows when the sun comes back. Whoever waits until the wait has cost as much as a refill, and then
 * gives up, never pays more than twice what the best foresight would have. On a day without a gap so far the wait
 * is half as long, since then it is the weather that changes; each gap that ended brings it closer to the whole.
 * What the day can no longer pay back is not waited for.
 */
function paysWaiting(situation: Situation): boolean {
  const { lostJ, dayJ, gaps } = situation.state.harvest;
  const costJ = refillCostJ(situation);
  return lostJ < costJ * (1 - 0.5 ** (gaps + 1)) && (dayJ === null || dayJ >= costJ);
}

/** The numbers of a gap that is worth waiting through, else null, as it is once the air shows that the weather turned. */
function gapValues(situation: Situation): Values | null {
  if (turnedByK(situation) !== null || !paysWaiting(situation)) return null;
  const { lostJ, dayJ } = situation.state.harvest;
  const costJ = refillCostJ(situation);
  return known({ lostKWh: kWh(lostJ), costKWh: kWh(costJ), dayKWh: dayJ === null ? null : kWh(dayJ) });
}

function kWh(joules: number): number {
  return joules / 3.6e6;
}

/** True when emptying the pan now would cool the store, and waiting may yet warm the pan. */
function coolsStore({ facts: { differenceK }, state: { harvest } }: Situation): boolean {
  return (differenceK ?? 0) < 0 && (harvest.gainW ?? 0) >= 0;
}
