import { type SettingName, settingDeclarations } from './settings.ts';

type Unit = (typeof settingDeclarations)[SettingName]['unit'];

/** How each unit of the table is written; empty where a number has none. */
export const settingUnitSymbols: Readonly<Record<Unit, string>> = {
  K: 'K',
  C: '°C',
  s: 's',
  min: 'min',
  h: 'h',
  '1/h': 'per h',
  '1/d': 'per day',
  '1': '',
};

/** Ends of names that say the unit. */
const unitEnds: Readonly<Record<Unit, RegExp>> = {
  K: /K$/,
  C: /C$/,
  s: /S$/,
  min: /Min$/,
  h: /H$/,
  '1/h': /$^/,
  '1/d': /$^/,
  '1': /Fraction$/,
};

/** Titles of setpoints whose name in the table would not tell enough in words. */
const ownTitles: Readonly<Partial<Record<SettingName, string>>> = {
  emptyAfterMin: 'Empty without gain after',
  frostReleaseC: 'Frost release temperature',
  frostReleaseMin: 'Frost release time',
  blindFrostAmbientC: 'Air frost temperature without pan sensors',
  frostNightC: 'Night temperature of frost',
  storeReleaseK: 'Store release difference',
  emptyWhenStoreFull: 'Empty when the store is full',
  nightCoolingFloorC: 'Floor of night cooling',
  leastOnS: 'Least running time',
  leastOffS: 'Least resting time',
  leastSpeedFraction: 'Least speed',
  exerciseAfterH: 'Exercise after',
  dryRunS: 'Dry run time',
  staleAfterS: 'Reading is stale after',
};

/** A setpoint's title, made from its name in the table unless it has one of its own. */
export function settingTitle(name: SettingName): string {
  const own = ownTitles[name];
  if (own !== undefined) return own;
  const bare = name.replace(unitEnds[settingDeclarations[name].unit], '');
  const words = bare.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}
