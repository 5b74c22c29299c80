import { settingsRemarks } from '../../controller/engine/index.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { SettingsRemark } from '../../shared-types/what-if.ts';

interface Loop {
  readonly site: Site;
  /** Settings in force. */
  readonly settings: Settings;
  /** What the controller has learnt of this loop. */
  readonly learnt: Readonly<Record<string, number>>;
}

/** What this engine remarks on settings that are not in force yet, and whether they bring it up. */
export function remarksOn({ site, settings, learnt }: Loop, other: Settings): SettingsRemark[] {
  const known = new Set(settingsRemarks(site, settings, learnt).map(({ text }) => text));
  return settingsRemarks(site, other, learnt).map(({ text }) => ({ text, isNew: !known.has(text) }));
}
