import type { ReasonCode } from '../../../shared-types/reasons.ts';
import { canEmpty, canRest } from '../pan.ts';
import type { Goal, Situation } from '../situation.ts';
import { fillsToday, refillCostJ } from './refill.ts';

/**
 * True where the pan is run in batches: filled, warmed at rest, sent home as a whole, filled again. A pan that
 * empties as soon as the pump stops cannot warm at rest, so it circulates whatever is set.
 */
export function runsBatches({ site, settings }: Pick<Situation, 'site' | 'settings'>): boolean {
  return settings.batchRunning === 1 && canRest(site);
}

/** True while the water in the pan is to be left there until it is warmer. */
export function batchWarms(situation: Situation): boolean {
  const { facts, settings } = situation;
  return runsBatches(situation) && facts.panC !== null && facts.panC < settings.batchTemperatureC;
}

/**
 * How a warm pan brings its heat home. A batch runs out into the store where that is possible and the day is still
 * worth another fill; else the pump exchanges it for the store's cold water.
 */
export function wayHome(situation: Situation): readonly [Goal, ReasonCode] {
  return runsBatches(situation) && runsIntoStore(situation) && paysAnotherFill(situation)
    ? ['empty', 'sending-batch-home']
    : ['run', 'circulating-for-heat'];
}

function runsIntoStore({ site }: Situation): boolean {
  return canEmpty(site) && site.plumbing === 'open-store';
}

function paysAnotherFill(situation: Situation): boolean {
  const { dayJ } = situation.state.harvest;
  if (fillsToday(situation) >= situation.settings.fillsPerDay) return false;
  return dayJ === null || dayJ >= refillCostJ(situation);
}
