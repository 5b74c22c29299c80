import { initialState, stepOn } from '../../controller/engine/index.ts';
import {
  defaultSettings,
  type Settings,
  type SettingsPatch,
  settingsSchema,
} from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { Policy } from './policy.ts';

/** The engine as a policy, with the site's settings and others in place of some of them. */
export function enginePolicy(site: Site, patch: SettingsPatch = {}): Policy {
  const settings: Settings = settingsSchema.parse({ ...defaultSettings, ...site.settings, ...patch });
  let state = initialState();
  return (input) => {
    const stepped = stepOn(state, input, site, settings);
    ({ state } = stepped);
    return stepped.decision.outputs;
  };
}
