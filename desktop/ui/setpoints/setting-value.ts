import type { SettingName } from '../../../shared-types/settings.ts';
import type { TemperatureUnit } from '../format/units.ts';
import { en } from '../text/en.ts';
import { isSwitch, settingUnit, shownDigits } from './setting-unit.ts';

/** A number in the unit of the screen, without noughts that say nothing. */
export const shownText = (shown: number): string => String(Number(shown.toFixed(shownDigits)));

/** A value as it stands in its field: without a unit, without noughts that say nothing. */
export function fieldText(name: SettingName, value: number, temperature: TemperatureUnit): string {
  return shownText(settingUnit(name, temperature).shown(value));
}

/** What was typed, in the unit of the table; null when it is no number. A comma serves as a point. */
export function parseField(name: SettingName, text: string, temperature: TemperatureUnit): number | null {
  const plain = text.trim().replace(',', '.').replace('\u2212', '-');
  if (!/^[+-]?\d{1,9}(\.\d{0,9})?$/.test(plain)) return null;
  return settingUnit(name, temperature).kept(Number(plain));
}

/** A value with its unit, or On and Off. */
export function settingText(name: SettingName, value: number, temperature: TemperatureUnit): string {
  if (isSwitch(name)) return value === 0 ? en.setpoints.off : en.setpoints.on;
  return `${fieldText(name, value, temperature)}\u00a0${settingUnit(name, temperature).symbol}`;
}
