import type { Situation } from '../situation.ts';
import { leastFlowLMin } from '../watch/pump-signs.ts';

/**
 * True when the filling pan is proven full: by its level; without a level by the fill time, during
 * which a flow sensor, where there is one, has to see water move at the end.
 */
export function isFilled(situation: Situation): boolean {
  const { facts, settings, runMs } = situation;
  const { phase, water } = situation.state;
  if (phase.name !== 'filling') return false;
  if (facts.levelMm !== null) return water.level === 'full';
  if (runMs - phase.sinceMs < settings.fillTimeS * 1000) return false;
  return facts.flowLMin === null || facts.flowLMin >= leastFlowLMin(situation);
}
