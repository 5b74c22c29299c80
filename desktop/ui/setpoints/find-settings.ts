import { settingTitle } from '../../../shared-types/setting-title.ts';
import {
  type SettingGroup,
  type SettingName,
  type Settings,
  settingDeclarations,
  settingGroups,
  settingNames,
} from '../../../shared-types/settings.ts';
import { en } from '../text/en.ts';
import type { Draft } from './draft.ts';

export const shownChoices = ['all', 'edited', 'set'] as const;
export type ShownChoice = (typeof shownChoices)[number];

export interface FoundGroup {
  readonly group: SettingGroup;
  readonly names: readonly SettingName[];
}

/** The setpoints that a search and a choice leave, by purpose. Every word of the search has to be found. */
export function findSettings(
  search: string,
  shown: ShownChoice,
  draft: Draft,
  inForce: Settings,
): readonly FoundGroup[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const meets = (name: SettingName) => {
    const text = searchedText(name);
    return isShown(name, shown, draft, inForce) && words.every((word) => text.includes(word));
  };
  return settingGroups
    .map((group) => ({
      group,
      names: settingNames.filter((name) => settingDeclarations[name].group === group && meets(name)),
    }))
    .filter(({ names }) => names.length > 0);
}

function isShown(name: SettingName, shown: ShownChoice, { edits }: Draft, inForce: Settings): boolean {
  if (shown === 'edited') return edits[name] !== undefined;
  return shown === 'all' || edits[name] !== undefined || inForce[name] !== settingDeclarations[name].default;
}

function searchedText(name: SettingName): string {
  const { group, meaning } = settingDeclarations[name];
  return `${settingTitle(name)} ${meaning} ${en.settingGroups[group]} ${name}`.toLowerCase();
}
