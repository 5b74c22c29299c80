import { settingTitle, settingUnitSymbols } from '../../../shared-types/setting-title.ts';
import { type SettingName, settingDeclarations } from '../../../shared-types/settings.ts';
import type { Change } from './points.ts';

export const kWhText = (joules: number) => (joules / 3.6e6).toFixed(2);
export const hoursText = (seconds: number) => (seconds / 3600).toFixed(1);

/** A change in words, such as `startDifferenceK 4 K, fillsPerDay 2 1/d`. */
export function changeText(change: Change): string {
  const parts = (Object.entries(change) as [SettingName, number][]).map(([name, value]) => {
    const { unit } = settingDeclarations[name];
    return unit === '1' ? `${name} ${value}` : `${name} ${value} ${unit}`;
  });
  return parts.length === 0 ? 'as it is' : parts.join(', ');
}

/** The same by titles and with units as they are written, for whoever does not type the names. */
export function titledChange(change: Change): string {
  const parts = (Object.entries(change) as [SettingName, number][]).map(([name, value]) =>
    `${settingTitle(name)} ${value} ${settingUnitSymbols[settingDeclarations[name].unit]}`.trim(),
  );
  return parts.join(', ');
}
