import {
  type SettingName,
  type Settings,
  settingCouplings,
  settingDeclarations,
} from '../../../shared-types/settings.ts';
import type { TemperatureUnit } from '../format/units.ts';
import { en } from '../text/en.ts';
import { type Draft, draftSettings, editedNames } from './draft.ts';
import { fieldText, settingText } from './setting-value.ts';

/** Why a set would be refused, and the setpoints that it concerns. */
export interface Fault {
  readonly names: readonly SettingName[];
  readonly text: string;
}

/** Everything that keeps a draft from being applied. Rules that tie setpoints stand on numbers in range. */
export function draftFaults(draft: Draft, temperature: TemperatureUnit): readonly Fault[] {
  const own = editedNames(draft).flatMap((name) => ownFault(draft, name, temperature));
  const bad = new Set(own.flatMap(({ names }) => names));
  const made = draftSettings(draft);
  const tied = settingCouplings.filter(({ names }) => !names.some((name) => bad.has(name)));
  return [...own, ...tied.flatMap((rule) => brokenBy(rule, made))];
}

function ownFault({ edits }: Draft, name: SettingName, temperature: TemperatureUnit): readonly Fault[] {
  const { least, most } = settingDeclarations[name];
  const value = edits[name]?.value ?? null;
  if (value === null) return [{ names: [name], text: en.setpoints.notNumber }];
  if (value >= least && value <= most) return [];
  const text = en.setpoints.outOfRange(
    fieldText(name, least, temperature),
    settingText(name, most, temperature),
  );
  return [{ names: [name], text }];
}

function brokenBy(
  { names, holds, text }: (typeof settingCouplings)[number],
  made: Settings,
): readonly Fault[] {
  return holds(made) ? [] : [{ names, text }];
}
