import type { Values } from '../known.ts';
import type { Command, Situation } from '../situation.ts';
import { differencesOf } from '../want/timers.ts';

const hourMs = 3_600_000;
/** A pump that is exercised turns for so long [ms], and for its least time; a design choice. */
const turnsMs = 10_000;
/** It waits for a pan that is no further from the store than this [K], so that little heat is moved about, */
const alikeK = 5;
/** but not beyond so many times its time. Design choices. */
const mostWaits = 2;

/**
 * Turns a pump that has long stood, so that it does not seize.
 *
 * Only under a full, resting pan: with an empty one it might run dry, and would leave water in the pan. A pump
 * whose pan is empty whenever it rests is turned by its fills alone. Never in frost, nor while anything else is
 * asked of it. The drain stays shut.
 */
export function exerciseCommand(situation: Situation): Command | null {
  const { state, runMs } = situation;
  const { phase, pump } = state;
  const idleMs = runMs - pump.sinceMs;
  if (phase.name === 'resting')
    return isDue(situation, idleMs) ? turn('run', { idleH: idleMs / hourMs }) : null;
  if (phase.name !== 'circulating' || !pump.exercising) return null;
  const { differenceK } = situation.facts;
  // By now it brings heat home.
  if (differenceK !== null && differenceK >= differencesOf(situation).startDifferenceK) return null;
  return turn(idleMs < turnsMs ? 'run' : 'rest', {});
}

function turn(goal: Command['goal'], values: Values): Command {
  return { goal, cause: { code: 'exercising-pump', values }, urgent: false, by: 'want' };
}

function isDue({ state, facts, settings }: Situation, idleMs: number): boolean {
  const dueMs = settings.exerciseAfterH * hourMs;
  if (idleMs < dueMs || state.water.level !== 'full' || state.frost.latched !== null) return false;
  const { coldestPanC, differenceK } = facts;
  if (coldestPanC === null || coldestPanC < settings.frostReleaseC || differenceK === null) return false;
  return Math.abs(differenceK) <= alikeK || idleMs >= mostWaits * dueMs;
}
