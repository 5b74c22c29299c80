import type { Situation } from '../../../../../controller/engine/situation.ts';
import { type EngineState, initialState, type Phase } from '../../../../../controller/engine/state.ts';
import { makeSite } from '../../rig.ts';
import { type Given, nowMs, situationOf } from '../../situations.ts';

export const hourMs = 3_600_000;
/** A pan of 400 L at 20 L/min has changed its water three times. */
export const flushedMs = 3_600_000;

/** A phase that has lasted for so long. */
export function lasting(name: Phase['name'], forMs: number): Partial<EngineState> {
  return { phase: { name, sinceMs: nowMs - forMs } as Phase };
}

/** Full flow for so long. */
export function streaming(given: Given, forMs = flushedMs): Situation {
  const { outputs } = initialState();
  const state = {
    outputs: { ...outputs, pumpFraction: 1 },
    ...lasting('circulating', forMs),
    ...given.state,
  };
  return situationOf({ level: 'full', ...given, state });
}

export const behindExchanger = { ...makeSite('drain-valve'), plumbing: 'reservoir' } as const;
