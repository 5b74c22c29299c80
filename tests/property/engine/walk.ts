import { initialState, step } from '../../../controller/engine/index.ts';
import type { EngineInput } from '../../../shared-types/engine.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { Ground, Invariant, Seen, Verdict } from '../invariants/invariant.ts';
import { Watch } from '../invariants/watch.ts';
import type { Stretch } from './draws.ts';

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
  const seen: Seen[] = [];
  for (const one of steps(stretches, { site, settings, step })) seen.push(one);
  return seen;
}

/** The same, step by step, with any engine. */
function* steps(stretches: readonly Stretch[], { site, settings, step: next }: Ground): Generator<Seen> {
  let before = initialState();
  for (const input of inputsOf(stretches)) {
    const { state, decision } = next(before, input, site, settings);
    yield { before, input, state, decision };
    before = state;
  }
}

/** What the first step that breaks an invariant breaks; undefined: none does. */
export function firstBroken(
  invariants: readonly Invariant[],
  stretches: readonly Stretch[],
  ground: Ground,
): Verdict {
  const watch = new Watch(invariants, ground);
  let count = 0;
  for (const seen of steps(stretches, ground)) {
    const broken = watch.look(seen);
    if (broken !== undefined) return `step ${count}, ${broken}`;
    count++;
  }
  return undefined;
}
