import { resolve } from 'node:path';
import { initialState } from '../../../controller/engine/index.ts';
import type { Decision } from '../../../shared-types/engine.ts';
import { defaultSettings, settingsSchema } from '../../../shared-types/settings.ts';
import { createLoop, type Loop } from '../../../sim/loop.ts';
import { type Account, emptyAccount } from '../../../sim/plant/account.ts';
import type { Fault } from '../../../sim/plant/faults.ts';
import { createPlant, type PlantState } from '../../../sim/plant/state.ts';
import { readScenario } from '../../../sim/scenario/read.ts';
import type { Scenario } from '../../../sim/scenario/scenario.ts';

/** Step of loop and engine [s]. */
export const stepS = 10;

/** A loop that begins to live. */
export interface Play {
  readonly loop: Loop;
  readonly plant: PlantState;
  readonly account: Account;
}

/** @throws Error when there is no such scenario, or it does not say when it begins. */
export function sceneOf(name: string): Scenario & { readonly startMs: number } {
  const read = readScenario(resolve('sim/scenarios/days', `${name}.yaml`));
  if (!read.ok) throw new Error(read.faults.join('\n'));
  const { startMs } = read.value;
  if (startMs === undefined) throw new Error(`${name} begins at any time`);
  return { ...read.value, startMs };
}

/** Begins a scene, without the faults of its file. */
export function begin(
  { site, seed, weather, startMs, plantOptions }: ReturnType<typeof sceneOf>,
  faultsAt?: (atMs: number) => readonly Fault[],
): Play {
  const plant = createPlant(site, plantOptions(startMs));
  const account = emptyAccount();
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const state = initialState();
  const faults = faultsAt === undefined ? {} : { faultsAt };
  return {
    loop: createLoop({ site, settings, plant, weather, seed, state, account, ...faults }),
    plant,
    account,
  };
}

/** A scene without its failure: decision and heat brought home since the beginning, step by step. */
export interface Healthy {
  at(step: number): { readonly decision: Decision; readonly homeJ: number };
}

/** Whoever waits for a moment longer than this waits in vain. */
const longestSteps = (4 * 86_400) / stepS;

const healthy = new Map<string, Healthy>();

/** Lives on as far as it is asked for, once for all rows of a scene. */
export function healthyOf(name: string): Healthy {
  const known = healthy.get(name);
  if (known !== undefined) return known;
  const scene = sceneOf(name);
  const { loop, account } = begin(scene);
  const past: { decision: Decision; homeJ: number }[] = [];
  const made: Healthy = {
    at(step) {
      if (step > longestSteps) throw new RangeError(`${name} never comes there`);
      while (past.length <= step) {
        const { decision } = loop.step(scene.startMs + past.length * stepS * 1000);
        past.push({ decision, homeJ: account.homeJ });
      }
      const found = past[step];
      if (found === undefined) throw new RangeError('before the beginning');
      return found;
    },
  };
  healthy.set(name, made);
  return made;
}
