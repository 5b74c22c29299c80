import type { Decision, EngineInput, Outputs } from '../../shared-types/engine.ts';
import type { Outcome } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import {
  type EngineState,
  engineVersion,
  initialState,
  outcomeOf,
  reviveState,
  safeOutputs,
  step,
} from '../engine/index.ts';

/** The control logic as the daemon calls it; handed in, so that a test can make it fail. */
export interface Engine {
  readonly engineVersion: string;
  readonly safeOutputs: Outputs;
  initialState(): EngineState;
  /** @returns undefined when what was saved is no state of this version. */
  reviveState(saved: unknown): EngineState | undefined;
  step(
    state: EngineState,
    input: EngineInput,
    site: Site,
    settings: Settings,
  ): { state: EngineState; decision: Decision };
  outcomeOf(decision: Decision): Outcome;
}

export type { EngineState };

export const engine: Engine = { engineVersion, safeOutputs, initialState, reviveState, step, outcomeOf };
