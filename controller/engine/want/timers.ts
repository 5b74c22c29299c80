import { heldFor, hold } from '../blocks/hold.ts';
import { drainOpenSince } from '../hazards/drain-open.ts';
import { noFlowSince } from '../hazards/no-flow.ts';
import type { HeatReading } from '../meter/heat-rate.ts';
import { comparedMs, turnoverMs } from '../pair/at-fill.ts';
import { pairOffset } from '../pair/uncertainty.ts';
import { canRest } from '../pan.ts';
import type { Situation } from '../situation.ts';
import type { GainMemory, Timers } from '../state.ts';
import { batchWarms } from './batch.ts';
import { cannotGain } from './collector.ts';
import { type Differences, effectiveDifferences } from './differences.ts';
import { unsureW } from './net-gain.ts';
import { isNotWorthPumping } from './pump-cost.ts';

/** A full pan has gained when it is this much warmer than its lowest since [K]; a design choice. */
const gainedK = 0.5;
/** A pan that empties with the pump runs for this many changes of its water first; a design choice. */
const settlingTurnovers = 2;
/** A pair of sensors that is known to this is not waited for [K]; a design choice. */
const knownSdK = 0.5;

/** How long the pan has to be seen losing before it is believed [ms]; a design choice. */
const losingHoldMs = 180_000;

/** True once a full pan has lost heat for so long that it is believed. */
export function isLosing({ state: { timers }, runMs }: Situation): boolean {
  return heldFor(timers.losingMs, runMs, losingHoldMs);
}

/** True when the pan has to be filled before anything can be gained. */
export function needsFill({ state: { phase, water } }: Situation): boolean {
  return phase.name === 'empty' || (phase.name === 'resting' && water.level !== 'full');
}

/** Time for which a fresh fill circulates before its difference means anything [ms]. */
export function settlingMs({ state: { phase, learnt }, site }: Situation): number {
  if (phase.name !== 'circulating' || !phase.afterFill) return 0;
  if (!canRest(site)) return settlingTurnovers * turnoverMs(site);
  return pairOffset(learnt).sdK > knownSdK ? comparedMs(site) : 0;
}

/**
 * Instants since which the conditions for wanting something hold. A doubtful reading cannot begin the
 * delay before a fill or a start, nor does it break one that it agrees with.
 */
export function updateTimers(situation: Situation, heat: HeatReading): Timers {
  const { state, facts, settings, runMs } = situation;
  const { timers, phase, harvest } = state;
  const { differenceK, sheetDifferenceK, differenceIsGood } = facts;
  const differences = differencesOf(situation);
  const rests = phase.name === 'resting' && !needsFill(situation);
  const warmToFill = sheetDifferenceK !== null && sheetDifferenceK >= settings.fillDifferenceK;
  const warmToStart =
    differenceK !== null && differenceK >= differences.startDifferenceK && !batchWarms(situation);
  const counts = (sinceMs: number | null) => differenceIsGood || sinceMs !== null;
  const settled = runMs - phase.sinceMs >= settlingMs(situation);
  const full = state.water.level === 'full';
  const loses = harvest.gainW !== null && harvest.gainW < -unsureW(situation);
  // What the sensors still call a small difference may be their own error, where the sky gives nothing.
  const losing = full && ((settled && loses) || (!warmToStart && cannotGain(situation)));
  return {
    fillMs: hold(timers.fillMs, needsFill(situation) && warmToFill && counts(timers.fillMs), runMs),
    startMs: hold(timers.startMs, rests && warmToStart && counts(timers.startMs), runMs),
    stopMs: hold(
      timers.stopMs,
      phase.name === 'circulating' && settled && closes(situation, heat, differences),
      runMs,
    ),
    noFlowMs: noFlowSince(situation),
    drainOpenMs: drainOpenSince(situation),
    losingMs: hold(timers.losingMs, losing, runMs),
  };
}

/** True while a circulation brings no heat that is worth its pump. */
function closes(situation: Situation, heat: HeatReading, { stopDifferenceK }: Differences): boolean {
  const { state, facts, site } = situation;
  const { differenceK } = facts;
  // A stop that empties the pan costs more than electricity, and more than a difference that the sensors may make.
  const rests = canRest(site);
  const closesAtK = rests ? stopDifferenceK : Math.min(stopDifferenceK, pairOffset(state.learnt).sdK);
  return (differenceK !== null && differenceK <= closesAtK) || (rests && isNotWorthPumping(situation, heat));
}

/** Starts of a day that cost nothing extra, and by how much each further one raises the bar [K]. Design choices. */
const freeStarts = 5;
const raisedK = 0.5;

/** The differences at which the pump starts and stops now [K]. */
export function differencesOf(situation: Situation): Differences {
  const { meter } = situation.state;
  const { startDifferenceK, stopDifferenceK } = effectiveDifferences(situation);
  const starts = meter.total.starts - meter.dayStart.starts;
  return { startDifferenceK: startDifferenceK + Math.max(0, starts - freeStarts) * raisedK, stopDifferenceK };
}

/** When a full pan gained last. A circulating pan gains; one that is empty or runs empty does not. */
export function updateGain({ state, facts, runMs }: Situation): GainMemory | null {
  const { gain, phase, water } = state;
  if (facts.panC === null || water.level === 'empty' || phase.name === 'emptying') return null;
  if (gain === null || phase.name === 'circulating' || facts.panC >= gain.lowC + gainedK)
    return { lowC: facts.panC, sinceMs: runMs };
  return facts.panC < gain.lowC ? { lowC: facts.panC, sinceMs: gain.sinceMs } : gain;
}
