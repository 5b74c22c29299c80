import type { Outputs } from '../../../shared-types/engine.ts';
import type { Site } from '../../../shared-types/site.ts';
import { emptyAccount } from '../../plant/account.ts';
import { advance } from '../../plant/advance.ts';
import type { PlantState } from '../../plant/state.ts';
import { at } from '../../plant/water.ts';
import type { Conditions } from '../../weather/conditions.ts';
import { emptying, pumping, resting } from '../policy.ts';

/** What can be done with the water: let it home, drive it round (which fills first), or leave it where it is. */
export const modes = ['empty', 'pump', 'rest'] as const;
export type Mode = (typeof modes)[number];

const outputsOf: Readonly<Record<Mode, Outputs>> = { empty: emptying, pump: pumping, rest: resting };

/** Where the pan empties with the pump, nothing can rest. */
export function modesOf(site: Site): readonly Mode[] {
  return site.drain === 'pump-stop' ? ['empty', 'pump'] : modes;
}

const scratch = emptyAccount();

/**
 * Lets a plant live in one mode through some steps of a sky, in place.
 *
 * Who knows the true temperatures runs the exchanger just while the reservoir is warmer than the store's bottom.
 *
 * @returns heat that came home meanwhile [J].
 */
export function liveInMode(
  plant: PlantState,
  mode: Mode,
  sky: readonly Conditions[],
  stepS: number,
  from: number,
  to: number,
): number {
  const { reservoir, store } = plant;
  const outputs = { ...outputsOf[mode] };
  scratch.homeJ = 0;
  for (let step = from; step < to; step++) {
    outputs.exchangerPumpOn =
      reservoir !== null && at(reservoir.waterC, 0) > at(store.waterC, store.waterC.length - 1);
    advance(plant, outputs, sky[step] as Conditions, stepS, undefined, scratch);
  }
  return scratch.homeJ;
}
