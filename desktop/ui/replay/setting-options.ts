import { settingTitle } from '../../../shared-types/setting-title.ts';
import {
  type SettingName,
  settingDeclarations,
  settingGroups,
  settingNames,
} from '../../../shared-types/settings.ts';
import { en } from '../text/en.ts';

/** Every setpoint by purpose for a list to choose from, but for some. */
export function settingOptions(without: readonly SettingName[] = []) {
  return settingGroups
    .map((group) => ({
      group: en.settingGroups[group],
      items: settingNames
        .filter((name) => settingDeclarations[name].group === group && !without.includes(name))
        .map((name) => ({ value: name as string, label: settingTitle(name) })),
    }))
    .filter(({ items }) => items.length > 0);
}
