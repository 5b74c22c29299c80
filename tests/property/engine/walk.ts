import { type EngineState, initialState, step } from '../../../controller/engine/index.ts';
import type { Decision, EngineInput } from '../../../shared-types/engine.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { Stretch } from './draws.ts';

/** One step as a property sees it. */
export interface Seen {
  readonly before: EngineState;
  readonly input: EngineInput;
  readonly state: EngineState;
  readonly decision: Decision;
}

/** The inputs of the stretches, one a step. */
export function* inputsOf(stretches: readonly Stretch[]): Generator<EngineInput> {
  let nowMs = Date.UTC(2031, 5, 21, 14);
  let first = true;
  for (const { steps, stepMs, elapsedMs, request, readings, feedback, localDay } of stretches)
    for (let i = 0; i < steps; i++) {
      const passedMs = first ? null : i === 0 ? elapsedMs : stepMs;
      first = false;
      nowMs += passedMs ?? 60_000;
      yield {
        nowMs,
        elapsedMs: passedMs,
        localDay,
        readings,
        feedback,
        request: (i === 0 ? request : null) as EngineInput['request'],
      };
    }
}

/** Steps the engine through the stretches. */
export function walk(stretches: readonly Stretch[], site: Site, settings: Settings): Seen[] {
  let before = initialState();
  const seen: Seen[] = [];
  for (const input of inputsOf(stretches)) {
    const { state, decision } = step(before, input, site, settings);
    seen.push({ before, input, state, decision });
    before = state;
  }
  return seen;
}

/** True when nobody can tell what the loop did before this step. */
export function isRestart({ input, before }: Seen, site: Site): boolean {
  const { elapsedMs, feedback } = input;
  if (elapsedMs === null) return true;
  const { pumpFraction, drainOpen, drainPumpOn } = before.outputs;
  const harmless = pumpFraction === 0 && drainOpen && !drainPumpOn;
  const lateMs = elapsedMs - site.control.outputExpiryS * 1000;
  if (lateMs <= 0 || harmless) return false;
  const told = feedback !== null && feedback.ageMs < lateMs;
  return !(told && (pumpFraction > 0 ? feedback.pumpFraction > 0 : feedback.drainOpen === drainOpen));
}
