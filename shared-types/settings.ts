import { z } from 'zod';

/** Purpose by which settings are grouped on a screen. */
export const settingGroups = ['harvest', 'filling', 'emptying', 'frost', 'heat', 'pump', 'metering'] as const;
export type SettingGroup = (typeof settingGroups)[number];

interface SettingDeclaration {
  readonly group: SettingGroup;
  readonly unit: 'K' | 'C' | 's' | 'min' | 'h' | '1/h' | '1/d' | '1';
  readonly default: number;
  readonly least: number;
  readonly most: number;
  readonly meaning: string;
}

/**
 * Every setpoint, declared once: type, form, check and documents follow from this table.
 *
 * The numbers are design choices unless a test in tests/reference names a source. The difference
 * defaults follow from sensor pairs that may disagree by 1.0 to 1.2 K when nobody compared them.
 */
export const settingDeclarations = {
  startDifferenceK: {
    group: 'harvest',
    unit: 'K',
    default: 1,
    least: 1,
    most: 30,
    meaning: 'The pump starts when the full pan is this much warmer than the store bottom.',
  },
  stopDifferenceK: {
    group: 'harvest',
    unit: 'K',
    default: 0.1,
    least: 0.1,
    most: 20,
    meaning: 'The pump stops when the difference has fallen to this.',
  },
  startDelayS: {
    group: 'harvest',
    unit: 's',
    default: 60,
    least: 0,
    most: 1800,
    meaning: 'How long the start difference has to hold.',
  },
  stopDelayS: {
    group: 'harvest',
    unit: 's',
    default: 900,
    least: 0,
    most: 1800,
    meaning: 'How long the stop difference has to hold.',
  },
  batchRunning: {
    group: 'harvest',
    unit: '1',
    default: 0,
    least: 0,
    most: 1,
    meaning:
      'At 1 the full pan rests until its water has the batch temperature and is then sent home as a whole; at 0 the pump circulates as long as that brings heat.',
  },
  batchTemperatureC: {
    group: 'harvest',
    unit: 'C',
    default: 40,
    least: 15,
    most: 80,
    meaning: 'Running in batches, the water goes home at this temperature.',
  },
  fillDifferenceK: {
    group: 'filling',
    unit: 'K',
    default: 3,
    least: 1,
    most: 60,
    meaning: 'The empty pan is filled when its dry sheet is this much warmer than the store bottom.',
  },
  fillDelayS: {
    group: 'filling',
    unit: 's',
    default: 120,
    least: 0,
    most: 3600,
    meaning: 'How long the fill difference has to hold.',
  },
  fillsPerDay: {
    group: 'filling',
    unit: '1/d',
    default: 4,
    least: 1,
    most: 48,
    meaning: 'The pan is filled at most this often in a local day.',
  },
  fillTimeS: {
    group: 'filling',
    unit: 's',
    default: 420,
    least: 20,
    most: 7200,
    meaning:
      'Time in which the pump fills the pan; without flow or level sensors the pan counts as full then.',
  },
  fillTimeoutS: {
    group: 'filling',
    unit: 's',
    default: 900,
    least: 40,
    most: 14_400,
    meaning: 'A fill that is not proven by then has failed.',
  },
  drainTimeS: {
    group: 'emptying',
    unit: 's',
    default: 900,
    least: 30,
    most: 14_400,
    meaning: 'Time in which the full pan empties.',
  },
  emptyAfterMin: {
    group: 'emptying',
    unit: 'min',
    default: 90,
    least: 5,
    most: 600,
    meaning: 'A full pan that gains nothing for this long is emptied, so that its heat comes home.',
  },
  frostTemperatureC: {
    group: 'frost',
    unit: 'C',
    default: 4,
    least: 2,
    most: 10,
    meaning: 'The pan is emptied when any of its temperatures falls to this.',
  },
  frostReleaseC: {
    group: 'frost',
    unit: 'C',
    default: 7,
    least: 3,
    most: 20,
    meaning: 'The pan may be filled again when all its temperatures have held this for the release time.',
  },
  frostReleaseMin: {
    group: 'frost',
    unit: 'min',
    default: 30,
    least: 5,
    most: 240,
    meaning: 'How long the frost release temperature has to hold.',
  },
  blindFrostAmbientC: {
    group: 'frost',
    unit: 'C',
    default: 6,
    least: 3,
    most: 15,
    meaning: 'With no working pan sensor the pan is emptied when the air is at this or colder.',
  },
  frostNightC: {
    group: 'frost',
    unit: 'C',
    default: 2,
    least: 0,
    most: 10,
    meaning:
      'While the sun is down no water is left in a pan whose sheet would fall to this under the sky of the night.',
  },
  storeLimitC: {
    group: 'heat',
    unit: 'C',
    default: 60,
    least: 25,
    most: 95,
    meaning: 'No more heat is brought to the store when its hottest sensor is at this.',
  },
  storeReleaseK: {
    group: 'heat',
    unit: 'K',
    default: 3,
    least: 1,
    most: 20,
    meaning: 'Harvest may go on when the store has cooled by this below its limit.',
  },
  emptyWhenStoreFull: {
    group: 'heat',
    unit: '1',
    default: 0,
    least: 0,
    most: 1,
    meaning:
      'At 1 the pan is emptied when the store takes no more heat, once it brings none and the liner stands a dry sheet; at 0 it rests first, until it loses heat.',
  },
  nightCooling: {
    group: 'heat',
    unit: '1',
    default: 0,
    least: 0,
    most: 1,
    meaning: 'At 1 the store is cooled through the pan in nights without frost.',
  },
  nightCoolingFloorC: {
    group: 'heat',
    unit: 'C',
    default: 45,
    least: 15,
    most: 90,
    meaning: 'Cooling the store by night ends when its bottom has come down to this.',
  },
  linerMarginK: {
    group: 'heat',
    unit: 'K',
    default: 8,
    least: 2,
    most: 30,
    meaning: 'The liner counts as too hot this much below its limit.',
  },
  leastOnS: {
    group: 'pump',
    unit: 's',
    default: 180,
    least: 0,
    most: 3600,
    meaning: 'The pump runs at least this long, hazards excepted.',
  },
  leastOffS: {
    group: 'pump',
    unit: 's',
    default: 180,
    least: 0,
    most: 3600,
    meaning: 'The pump rests at least this long, hazards excepted.',
  },
  startsPerHour: {
    group: 'pump',
    unit: '1/h',
    default: 6,
    least: 1,
    most: 30,
    meaning: 'The pump starts at most this often in any hour.',
  },
  leastSpeedFraction: {
    group: 'pump',
    unit: '1',
    default: 0.4,
    least: 0.2,
    most: 1,
    meaning: 'A pump with speed control runs no slower than this while it brings heat home.',
  },
  exerciseAfterH: {
    group: 'pump',
    unit: 'h',
    default: 168,
    least: 24,
    most: 2000,
    meaning: 'A pump that has stood for this long under a full pan is turned briefly.',
  },
  dryRunS: {
    group: 'pump',
    unit: 's',
    default: 15,
    least: 5,
    most: 20,
    meaning: 'A running pump that moves no water is stopped after this; needs a flow or a level sensor.',
  },
  staleAfterS: {
    group: 'metering',
    unit: 's',
    default: 60,
    least: 10,
    most: 600,
    meaning: 'A reading older than this is not used.',
  },
  gapLimitS: {
    group: 'metering',
    unit: 's',
    default: 120,
    least: 10,
    most: 600,
    meaning: 'No heat is counted across a gap in the readings longer than this.',
  },
} as const satisfies Record<string, SettingDeclaration>;

export type SettingName = keyof typeof settingDeclarations;
export const settingNames = Object.keys(settingDeclarations) as SettingName[];
export type Settings = Record<SettingName, number>;

type NumberShape = Record<SettingName, z.ZodNumber>;
const numberShape = Object.fromEntries(
  settingNames.map((name) => {
    const { least, most, meaning } = settingDeclarations[name];
    return [name, z.number().min(least).max(most).describe(meaning)];
  }),
) as NumberShape;

interface Coupling {
  readonly names: readonly [SettingName, ...SettingName[]];
  readonly holds: (settings: Settings) => boolean;
  readonly text: string;
}

function isSwitch(value: number): boolean {
  return value === 0 || value === 1;
}

/** Rules that tie settings to each other. A set that breaks one is refused as a whole. */
export const settingCouplings: readonly Coupling[] = [
  {
    names: ['stopDifferenceK', 'startDifferenceK'],
    holds: (s) => s.stopDifferenceK + 0.5 <= s.startDifferenceK,
    text: 'The stop difference is at least 0.5 K below the start difference.',
  },
  {
    names: ['fillTimeS', 'fillTimeoutS'],
    holds: (s) => s.fillTimeoutS >= 1.2 * s.fillTimeS,
    text: 'The fill timeout is at least 1.2 times the fill time.',
  },
  {
    names: ['frostTemperatureC', 'frostReleaseC'],
    holds: (s) => s.frostReleaseC >= s.frostTemperatureC + 1,
    text: 'The frost release temperature is at least 1 K above the frost temperature.',
  },
  {
    names: ['frostNightC', 'frostTemperatureC'],
    holds: (s) => s.frostNightC <= s.frostTemperatureC,
    text: 'The night temperature of frost is not above the frost temperature.',
  },
  {
    names: ['emptyWhenStoreFull'],
    holds: (s) => isSwitch(s.emptyWhenStoreFull),
    text: 'The switch of emptying at a full store is 0 or 1.',
  },
  {
    names: ['nightCooling'],
    holds: (s) => isSwitch(s.nightCooling),
    text: 'The switch of night cooling is 0 or 1.',
  },
  {
    names: ['batchRunning'],
    holds: (s) => isSwitch(s.batchRunning),
    text: 'The switch of batch running is 0 or 1.',
  },
  {
    names: ['batchTemperatureC', 'storeLimitC'],
    holds: (s) => s.batchRunning === 0 || s.batchTemperatureC <= s.storeLimitC,
    text: 'The batch temperature is not above the store limit.',
  },
  {
    names: ['nightCoolingFloorC', 'storeLimitC'],
    holds: (s) => s.nightCooling === 0 || s.nightCoolingFloorC + 5 <= s.storeLimitC,
    text: 'The floor of night cooling is at least 5 K below the store limit.',
  },
];

/** A whole, valid set of settings. */
export const settingsSchema = z.strictObject(numberShape).superRefine((settings, context) => {
  for (const rule of settingCouplings)
    if (!rule.holds(settings))
      context.addIssue({ code: 'custom', path: [rule.names[0]], message: rule.text, input: settings });
});

/** Some settings, the others staying as they are. Couplings are checked on the whole set. */
export const settingsPatchSchema = z.strictObject(numberShape).partial();
export type SettingsPatch = z.infer<typeof settingsPatchSchema>;

export const defaultSettings: Settings = Object.fromEntries(
  settingNames.map((name) => [name, settingDeclarations[name].default]),
) as Settings;
