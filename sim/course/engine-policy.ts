import { type EngineState, initialState, stepOn } from '../../controller/engine/index.ts';
import {
  defaultSettings,
  type Settings,
  type SettingsPatch,
  settingsSchema,
} from '../../shared-types/settings.ts';
import type { Policy } from './policy.ts';
import { runPolicy } from './run-policy.ts';
import type { Run } from './runs.ts';

/** So long the engine has run the loop before the day of the course, in fair weather [ms]. */
const acquaintedMs = 3 * 86_400_000;

/**
 * The engine as a policy, with the site's settings and others in place of some of them.
 *
 * It knows the loop by the days before, as any controller does but on its first day: its sensors are compared and
 * its flow is learnt. Of the weather of the day it knows nothing.
 */
export function enginePolicy(run: Run, patch: SettingsPatch = {}): Policy {
  const settings = settingsSchema.parse({ ...defaultSettings, ...run.site.settings, ...patch });
  return engineFrom(acquainted(run, settings), run, settings).policy;
}

/** An engine that knows the loop of a run, as it stands before the day begins. */
export function acquainted(run: Run, settings: Settings): EngineState {
  const { fairWeather: weather, fromMs } = run;
  const { policy, state } = engineFrom(initialState(), run, settings);
  runPolicy({ ...run, weather, fromMs: fromMs - acquaintedMs, toMs: fromMs }, policy);
  return { ...initialState(), learnt: state().learnt };
}

function engineFrom(
  first: EngineState,
  { site }: Run,
  settings: Settings,
): { readonly policy: Policy; readonly state: () => EngineState } {
  let state = first;
  return {
    policy(input) {
      const stepped = stepOn(state, input, site, settings);
      ({ state } = stepped);
      return stepped.decision.outputs;
    },
    state: () => state,
  };
}
