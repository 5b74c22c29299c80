import { describe, expect, it } from 'vitest';
import {
  defaultSettings,
  settingCouplings,
  settingDeclarations,
  settingNames,
  settingsPatchSchema,
  settingsSchema,
} from '../../../shared-types/settings.ts';

const refusals = (changes: object) =>
  settingsSchema.safeParse({ ...defaultSettings, ...changes }).error?.issues.map(({ message }) => message) ??
  [];

/** For each rule, settings that just keep it and settings that just break it. */
const edges: [string, object, object][] = [
  ['stop difference', { stopDifferenceK: 0.5 }, { stopDifferenceK: 0.6 }],
  ['fill timeout', { fillTimeS: 500, fillTimeoutS: 600 }, { fillTimeS: 500, fillTimeoutS: 599 }],
  ['frost release', { frostReleaseC: 5 }, { frostReleaseC: 4.9 }],
  ['night temperature of frost', { frostNightC: 4 }, { frostNightC: 4.1 }],
  [
    'floor of night cooling',
    { nightCooling: 1, nightCoolingFloorC: 55 },
    { nightCooling: 1, nightCoolingFloorC: 55.1 },
  ],
  ['switch of night cooling', { nightCooling: 1 }, { nightCooling: 0.5 }],
  ['switch of batch running', { batchRunning: 1 }, { batchRunning: 0.5 }],
  [
    'batch temperature',
    { batchRunning: 1, batchTemperatureC: 60 },
    { batchRunning: 1, batchTemperatureC: 60.1 },
  ],
  ['switch of emptying', { emptyWhenStoreFull: 1 }, { emptyWhenStoreFull: 0.5 }],
];

describe('settings', () => {
  it('are valid by default', () => {
    expect(refusals({})).toEqual([]);
  });

  it.each(settingNames)('%s stays in its range', (name) => {
    const { least, most } = settingDeclarations[name];
    const shape = settingsPatchSchema;
    expect(shape.safeParse({ [name]: least }).success).toBe(true);
    expect(shape.safeParse({ [name]: most }).success).toBe(true);
    for (const wrong of [least - 0.001, most + 0.001, Number.NaN, '5', null])
      expect(shape.safeParse({ [name]: wrong }).success, `${wrong}`).toBe(false);
  });

  it('have an edge tested for every rule', () => {
    expect(edges).toHaveLength(settingCouplings.length);
  });

  it.each(edges)('are refused when the rule of the %s is broken, and only then', (words, kept, broken) => {
    expect(refusals(kept)).toEqual([]);
    expect(refusals(broken)).toEqual([expect.stringMatching(new RegExp(`^The ${words}`))]);
  });

  it('are refused with every reason at once', () => {
    expect(refusals({ stopDifferenceK: 6, frostReleaseC: 4 })).toHaveLength(2);
  });

  it('refuse a name that is none', () => {
    expect(settingsPatchSchema.safeParse({ startDiffernceK: 5 }).success).toBe(false);
  });
});
