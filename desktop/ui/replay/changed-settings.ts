import { settingTitle } from '../../../shared-types/setting-title.ts';
import { type SettingName, type Settings, settingNames } from '../../../shared-types/settings.ts';
import type { TemperatureUnit } from '../format/units.ts';
import { settingText } from '../setpoints/setting-value.ts';
import { en } from '../text/en.ts';

const differing = (one: Settings, other: Settings): readonly SettingName[] =>
  settingNames.filter((name) => one[name] !== other[name]);

export const sameSettings = (one: Settings, other: Settings): boolean => differing(one, other).length === 0;

/** Each setpoint that differs, in words: as it was, and as it was tried. */
export function changedLines(
  then: Settings,
  tried: Settings,
  temperature: TemperatureUnit,
): readonly string[] {
  return differing(then, tried).map((name) =>
    en.setpoints.changes.line(
      settingTitle(name),
      settingText(name, then[name], temperature),
      settingText(name, tried[name], temperature),
    ),
  );
}

/** A change in one line; words for none where nothing is changed. */
export function changeText(
  change: Readonly<Partial<Settings>>,
  temperature: TemperatureUnit,
  none: string,
): string {
  const parts = settingNames.flatMap((name) => {
    const value = change[name];
    return value === undefined ? [] : [`${settingTitle(name)} ${settingText(name, value, temperature)}`];
  });
  return parts.length === 0 ? none : parts.join(', ');
}
