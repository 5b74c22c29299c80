import type { TrustedReadings } from '../../shared-types/readings.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { Facts } from './sense/facts.ts';
import type { Cause, EngineState } from './state.ts';

/** What the rules of one step judge: the state, brought up to this instant, and what is read now. */
export interface Situation {
  readonly state: EngineState;
  readonly runMs: number;
  readonly elapsedMs: number;
  readonly localDay: string | null;
  /** Height of the sun above the horizon [deg]; null while no calendar was heard. */
  readonly sunHeightDeg: number | null;
  readonly readings: TrustedReadings;
  readonly facts: Facts;
  /** What fresh feedback says of the drain valve: true for open; null where nothing tells. */
  readonly drainSays: boolean | null;
  readonly site: Site;
  /** As set, but with the fill and drain times that were measured of this loop, where they were. */
  readonly settings: Settings;
}

/** The same situation with another state. */
export function withState(
  { runMs, elapsedMs, localDay, sunHeightDeg, readings, facts, drainSays, site, settings }: Situation,
  state: EngineState,
): Situation {
  return { state, runMs, elapsedMs, localDay, sunHeightDeg, readings, facts, drainSays, site, settings };
}

/**
 * What the loop should do. `run` fills the pan if need be and circulates; `rest` stops the pump and
 * keeps the water where the loop can; `empty` stops the pump and opens the drain where there is one;
 * `lock` does the same until an operator lifts it.
 */
export type Goal = 'run' | 'rest' | 'empty' | 'lock';

export interface Command {
  readonly goal: Goal;
  readonly cause: Cause;
  /** A hazard does not wait for least times. */
  readonly urgent: boolean;
  readonly by: 'hazard' | 'operator' | 'want';
}

export function isPumping(state: Pick<EngineState, 'phase'>): boolean {
  return state.phase.name === 'filling' || state.phase.name === 'circulating';
}
