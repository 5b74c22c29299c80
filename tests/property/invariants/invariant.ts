import { hazards } from '../../../controller/engine/hazards/table.ts';
import type { EngineState, step } from '../../../controller/engine/index.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Decision, EngineInput } from '../../../shared-types/engine.ts';
import type { TrustedReading } from '../../../shared-types/readings.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';

export type Step = typeof step;

/** One step as an invariant sees it. */
export interface Seen {
  readonly before: EngineState;
  readonly input: EngineInput;
  readonly state: EngineState;
  readonly decision: Decision;
}

/** What stays the same through a sequence. `step` is the engine that is judged, for what-if questions. */
export interface Ground {
  readonly site: Site;
  readonly settings: Settings;
  readonly step: Step;
}

/** What was broken, in words; undefined: nothing. */
export type Verdict = string | undefined;

/** A promise that holds for every sequence of steps. */
export interface Invariant {
  readonly name: string;
  /** Exactly what is promised. */
  readonly promise: string;
  /** Where it is not, and why not. */
  readonly exceptions: readonly string[];
  /** Begins to watch a sequence, which is then shown step by step. */
  readonly watch: (ground: Ground) => (seen: Seen) => Verdict;
}

/** An invariant that looks at each step alone. */
export function eachStep(check: (seen: Seen, ground: Ground) => Verdict): Invariant['watch'] {
  return (ground) => (seen) => check(seen, ground);
}

const hazardCodes: ReadonlySet<string> = new Set(hazards.map((hazard) => hazard.code));

/** True when a protection gave the reason of the phase. */
export function isByHazard({ reasons }: Decision): boolean {
  return hazardCodes.has(reasons.phase.code);
}

export function isPumping({ outputs }: Pick<Decision, 'outputs'>): boolean {
  return outputs.pumpFraction > 0;
}

export function usable({ belief }: Decision, channel: Channel): number | null {
  const reading: TrustedReading | undefined = belief.readings[channel];
  return reading === undefined || reading.quality === 'failed' ? null : reading.value;
}

export const panChannels = ['panOutletC', 'panSheetC', 'panInletC'] as const;
const storeChannels = ['storeBottomC', 'storeMiddleC', 'storeTopC'] as const;

/** The coldest of what the pan's thermometers say; null when none can be used. */
export function coldestPanC(decision: Decision): number | null {
  return extreme(decision, panChannels, Math.min);
}

export function hottestStoreC(decision: Decision): number | null {
  return extreme(decision, storeChannels, Math.max);
}

function extreme(
  decision: Decision,
  channels: readonly Channel[],
  of: (...values: number[]) => number,
): number | null {
  const values = channels.map((channel) => usable(decision, channel)).filter((value) => value !== null);
  return values.length === 0 ? null : of(...values);
}

/** True when nobody can tell what the loop did before this step. */
export function isRestart({ input, before }: Pick<Seen, 'input' | 'before'>, site: Site): boolean {
  const { elapsedMs, feedback } = input;
  if (elapsedMs === null || !before.stepped) return true;
  const { pumpFraction, drainOpen, drainPumpOn } = before.outputs;
  const harmless = pumpFraction === 0 && drainOpen && !drainPumpOn;
  const lateMs = elapsedMs - site.control.outputExpiryS * 1000;
  if (lateMs <= 0 || harmless) return false;
  const told = feedback !== null && feedback.ageMs < lateMs;
  return !(told && (pumpFraction > 0 ? feedback.pumpFraction > 0 : feedback.drainOpen === drainOpen));
}

export const keepWarmException =
  'A pan that cannot be emptied, or that was to be emptied, did not, and is measured to be full, may be kept warm by the pump as a last resort.';

/** True while that last resort is in force, and its conditions are seen to hold. */
export function isKeptWarm({ state, decision }: Seen, site: Site): boolean {
  if (decision.reasons.phase.code !== 'frost-measured' || state.frost.keepWarmMs === null) return false;
  if (site.drain === 'none') return decision.belief.water !== 'empty';
  const overdue = state.water.overdue && decision.belief.water === 'full';
  return overdue && usable(decision, 'storeBottomC') !== null;
}
