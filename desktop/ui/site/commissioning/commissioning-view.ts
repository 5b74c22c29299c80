import {
  type Commissioning,
  type CommissioningStep,
  commissioningSteps,
} from '../../../../shared-types/commissioning.ts';
import type { Decision } from '../../../../shared-types/engine.ts';
import type { LogEvent } from '../../../../shared-types/log.ts';
import type { Site } from '../../../../shared-types/site.ts';

/** True while a run is under way. */
export function isUnderWay({ step }: Commissioning): boolean {
  return step !== 'done' && step !== 'ended';
}

/** The steps that a run takes on this loop: a pan that cannot be emptied is taken as it is. */
export function stepsOf(site: Site): readonly CommissioningStep[] {
  const all = commissioningSteps.filter((step) => step !== 'done' && step !== 'ended');
  return site.drain === 'none' ? all.filter((step) => step !== 'emptying' && step !== 'draining') : all;
}

/** What a person may tell the run now: that the pan is full or empty. Null while a sensor tells it, or nothing is asked. */
export function askOf({ commissioning, outputs, belief }: Decision, site: Site): 'full' | 'empty' | null {
  if (commissioning === null || site.drain === 'none') return null;
  if (belief.readings.panLevelMm?.quality === 'good') return null;
  const pumping = outputs.pumpFraction > 0;
  if (commissioning.step === 'filling' && pumping) return 'full';
  return commissioning.step === 'draining' && !pumping ? 'empty' : null;
}

export interface ResultCounts {
  readonly passed: number;
  readonly failed: number;
  readonly byHand: number;
}

/** How the checks of a logged run came out. */
export function countResults({ values }: LogEvent): ResultCounts {
  const count = (result: string) => Object.values(values).filter((value) => value === result).length;
  return { passed: count('passed'), failed: count('failed'), byHand: count('by-hand') };
}
