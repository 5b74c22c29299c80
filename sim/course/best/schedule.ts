import type { PlantState } from '../../plant/state.ts';
import type { Conditions } from '../../weather/conditions.ts';
import { outsideJ } from '../harvest.ts';
import { clonePlant } from './clone-plant.ts';
import { liveInMode, type Mode } from './modes.ts';

/** Modes for the steps of a sky, with the loop that lives through them. */
export interface Stage {
  readonly plant: PlantState;
  readonly sky: readonly Conditions[];
  readonly stepS: number;
}

/** What a plan brings from a step on, when it is kept to [J]; what is outside then counts in full. */
export function playPlan({ plant, sky, stepS }: Stage, plan: readonly Mode[], first = 0): number {
  const after = clonePlant(plant);
  return playOn({ plant: after, sky, stepS }, plan, first, sky.length) + outsideJ(after);
}

/** Lets the plant itself live through some steps of a plan. @returns heat that came home [J]. */
export function playOn(stage: Stage, plan: readonly Mode[], first: number, end: number): number {
  let homeJ = 0;
  for (let from = first; from < end; ) {
    const mode = plan[from] as Mode;
    let to = from + 1;
    while (to < end && plan[to] === mode) to++;
    homeJ += liveInMode(stage.plant, mode, stage.sky, stage.stepS, from, to);
    from = to;
  }
  return homeJ;
}

/** The same plan on shorter steps. */
export function divided(plan: readonly Mode[], parts: number): Mode[] {
  return plan.flatMap((mode) => Array.from({ length: parts }, () => mode));
}
