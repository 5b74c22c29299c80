import { settingTitle, settingUnitSymbols } from '../../shared-types/setting-title.ts';
import {
  type SettingName,
  type Settings,
  type SettingsPatch,
  settingDeclarations,
  settingsSchema,
} from '../../shared-types/settings.ts';

export type SettingsChange =
  | {
      readonly kind: 'changed';
      readonly settings: Settings;
      readonly text: string;
      readonly names: SettingName[];
    }
  | { readonly kind: 'same' }
  | { readonly kind: 'refused'; readonly text: string };

/** Merges a patch into the settings in force and checks the whole; every reason of a refusal is given. */
export function changeSettings(current: Settings, patch: SettingsPatch): SettingsChange {
  const given = Object.entries(patch).filter(([, value]) => value !== undefined);
  const checked = settingsSchema.safeParse({ ...current, ...Object.fromEntries(given) });
  if (!checked.success)
    return {
      kind: 'refused',
      text: checked.error.issues.map((issue) => reasonOf(issue.path, issue.message)).join(' '),
    };
  const settings = checked.data;
  const names = (Object.keys(settings) as SettingName[]).filter((name) => settings[name] !== current[name]);
  if (names.length === 0) return { kind: 'same' };
  const text = names.map((name) => changeOf(name, current[name], settings[name])).join(', ');
  return { kind: 'changed', settings, text, names };
}

function reasonOf(path: readonly PropertyKey[], message: string): string {
  // A rule that couples settings is a sentence already.
  if (message.endsWith('.')) return message;
  const name = path[0] as SettingName;
  const { least, most } = settingDeclarations[name];
  return `${settingTitle(name)} is allowed from ${least} to ${withUnit(name, most)}.`;
}

/** Within a sentence, such as `start difference from 1 to 2.5 K`. */
function changeOf(name: SettingName, before: number, after: number): string {
  const title = settingTitle(name);
  return `${title.charAt(0).toLowerCase()}${title.slice(1)} from ${before} to ${withUnit(name, after)}`;
}

const withUnit = (name: SettingName, value: number) =>
  `${value} ${settingUnitSymbols[settingDeclarations[name].unit]}`.trim();
