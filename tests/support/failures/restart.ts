import { reviveState } from '../../../controller/engine/index.ts';
import type { Decision, PhaseName } from '../../../shared-types/engine.ts';
import { defaultSettings, settingsSchema } from '../../../shared-types/settings.ts';
import { createLoop } from '../../../sim/loop.ts';
import { begin, healthyOf, sceneOf, stepS } from './scene.ts';

export interface Restarted {
  /** What the controller decided first, and all that it decided in the hours after. */
  readonly first: Decision;
  readonly later: readonly Decision[];
  /** Totals of heat, electricity and starts before it was killed. */
  readonly before: Decision['meter']['total'];
}

const hoursAfter = 3;

/**
 * Kills a controller once its loop has been in a phase for this long, and starts it again with the state that
 * it saved, through JSON. The outputs have fallen safe meanwhile.
 */
export function killedIn(phase: PhaseName, forS: number): Restarted {
  const scene = sceneOf('clear-day');
  const healthy = healthyOf('clear-day');
  let step = 0;
  const isThere = ({ phase: name, phaseForMs }: Decision) => name === phase && phaseForMs >= forS * 1000;
  while (!isThere(healthy.at(step).decision)) step++;
  const { loop, plant } = begin(scene);
  const at = (number: number) => scene.startMs + number * stepS * 1000;
  let last = loop.step(at(0));
  for (let number = 1; number <= step; number++) last = loop.step(at(number));
  const state = reviveState(JSON.parse(JSON.stringify(last.state)));
  if (state === undefined) throw new Error('the saved state is not taken up');
  const { site, weather, seed } = scene;
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const again = createLoop({ site, settings, plant, weather, seed, state });
  const later: Decision[] = [];
  for (let number = step + 1; number <= step + (hoursAfter * 3600) / stepS; number++)
    later.push(again.step(at(number)).decision);
  const [first] = later;
  if (first === undefined) throw new Error('it has not stepped again');
  return { first, later, before: last.decision.meter.total };
}
