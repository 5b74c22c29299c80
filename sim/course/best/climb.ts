import { outsideJ } from '../harvest.ts';
import { clonePlant } from './clone-plant.ts';
import type { Mode } from './modes.ts';
import { playOn, playPlan, type Stage } from './schedule.ts';

/** A switch is tried so many steps earlier (below 0) and later. */
const shifts = [-4, -2, -1, 1, 2, 4] as const;
const furthest = 4;

/**
 * Improves a plan by moving its switches, freely and one after the other in the order of time, as long as a whole
 * round wins anything to speak of.
 *
 * @returns the better plan, and what it brings [J].
 */
export function climb(stage: Stage, start: readonly Mode[], rounds: number) {
  let plan = start;
  let broughtJ = playPlan(stage, plan) - outsideJ(stage.plant);
  for (let round = 0; round < rounds; round++) {
    const better = climbOnce(stage, plan);
    if (better.broughtJ <= broughtJ * (1 + leastWin)) break;
    ({ plan, broughtJ } = better);
  }
  return { plan, broughtJ };
}

const leastWin = 2e-4;

function climbOnce({ plant, sky, stepS }: Stage, start: readonly Mode[]) {
  const prefix = { plant: clonePlant(plant), sky, stepS };
  let plan = start;
  let prefixJ = 0;
  let lived = 0;
  for (let step = 1; step < sky.length; step++) {
    if (plan[step] === plan[step - 1]) continue;
    const keep = Math.max(lived, step - furthest);
    prefixJ += playOn(prefix, plan, lived, keep);
    lived = keep;
    plan = bestShift(prefix, plan, step, lived);
  }
  return { plan, broughtJ: prefixJ + playPlan(prefix, plan, lived) - outsideJ(plant) };
}

/** The plan with the switch at a step where it does best. */
function bestShift(prefix: Stage, plan: readonly Mode[], step: number, lived: number): readonly Mode[] {
  let best = { plan, restJ: playPlan(prefix, plan, lived) };
  for (const shift of shifts) {
    const moved = shifted(plan, step, shift, lived);
    const restJ = playPlan(prefix, moved, lived);
    if (restJ > best.restJ) best = { plan: moved, restJ };
  }
  return best.plan;
}

/** A switch moved: what stood on the side that loses makes room for the other. */
function shifted(plan: readonly Mode[], step: number, shift: number, lived: number): readonly Mode[] {
  const moved = plan.slice();
  const mode = plan[shift < 0 ? step : step - 1] as Mode;
  const from = Math.max(lived, Math.min(step, step + shift));
  const to = Math.min(plan.length, Math.max(step, step + shift));
  return moved.fill(mode, from, to);
}
