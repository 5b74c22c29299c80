import { type SettingName, settingDeclarations } from '../../../shared-types/settings.ts';
import { en } from '../text/en.ts';

/** Ends of names that say the unit. */
const unitEnds: Readonly<Partial<Record<string, RegExp>>> = {
  K: /K$/,
  C: /C$/,
  s: /S$/,
  min: /Min$/,
  h: /H$/,
  '1': /Fraction$/,
};

/** A setpoint's name in words, made from its name in the table unless the catalogue has a better one. */
export function settingTitle(name: SettingName): string {
  const given = en.settingTitles[name];
  if (given !== undefined) return given;
  const bare = name.replace(unitEnds[settingDeclarations[name].unit] ?? /$^/, '');
  const words = bare.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}
