import { type SettingName, settingNames } from '../../../../shared-types/settings.ts';

/** Setpoints that are offered at first: those that decide most of a fair day. A design choice. */
const usual: readonly SettingName[] = [
  'startDifferenceK',
  'stopDifferenceK',
  'fillDifferenceK',
  'emptyAfterMin',
];

/** Setpoints that have a field: the usual ones, those that were changed, and those that were asked for. */
export function trialNames(
  edited: readonly SettingName[],
  added: readonly SettingName[],
): readonly SettingName[] {
  const wanted = new Set([...usual, ...edited, ...added]);
  return settingNames.filter((name) => wanted.has(name));
}
