import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  changedElsewhere,
  currentDraft,
  type Draft,
  draftSettings,
  editedNames,
  keepMine,
  newDraft,
  patchOf,
  takeTheirs,
  withEdit,
  withoutEdit,
  withValues,
} from '../../../desktop/ui/setpoints/draft.ts';
import { draftFaults } from '../../../desktop/ui/setpoints/draft-faults.ts';
import { findSettings } from '../../../desktop/ui/setpoints/find-settings.ts';
import { isSwitch } from '../../../desktop/ui/setpoints/setting-unit.ts';
import { fieldText, parseField, settingText } from '../../../desktop/ui/setpoints/setting-value.ts';
import { settingTitle } from '../../../shared-types/setting-title.ts';
import {
  defaultSettings,
  type SettingName,
  settingDeclarations,
  settingNames,
  settingsSchema,
} from '../../../shared-types/settings.ts';

const start = newDraft(defaultSettings);
const edited = (draft: Draft, name: SettingName, value: number) =>
  withEdit(draft, name, { text: String(value), value });

describe('a setpoint in its field', () => {
  test.each([
    ['2.5', 2.5],
    [' 2,5 ', 2.5],
    ['-3', -3],
    ['\u22123', -3],
    ['+3', 3],
    ['3.', 3],
    ['', null],
    ['.', null],
    ['1e2', null],
    ['0x10', null],
    ['1.2.3', null],
    ['1,200.5', null],
    ['NaN', null],
  ])('typed as "%s" is %s', (text, value) => {
    expect(parseField('startDifferenceK', text, 'C')).toBe(value);
  });

  test('is shown in the chosen unit, a difference without the 32 of a temperature', () => {
    expect(settingText('frostTemperatureC', 4, 'F')).toBe('39.2\u00a0°F');
    expect(settingText('startDifferenceK', 2.5, 'F')).toBe('4.5\u00a0°F');
    expect(settingText('startDifferenceK', 2.5, 'C')).toBe('2.5\u00a0K');
    expect(settingText('leastSpeedFraction', 0.4, 'C')).toBe('40\u00a0%');
    expect(settingText('nightCooling', 1, 'C')).toBe('On (1)');
    expect(settingText('startsPerHour', 6, 'C')).toBe('6\u00a0per h');
  });

  test('comes back as it was from either unit, in steps of a thousandth', () => {
    const thousandths = fc.record({
      name: fc.constantFrom(...settingNames),
      share: fc.integer({ min: 0, max: 1_000_000 }),
      temperature: fc.constantFrom('C' as const, 'F' as const),
    });
    fc.assert(
      fc.property(thousandths, ({ name, share, temperature }) => {
        const { least, most, unit } = settingDeclarations[name];
        const digits = unit === '1' ? 5 : 3;
        const value = Number((least + ((most - least) * share) / 1_000_000).toFixed(digits));
        expect(parseField(name, fieldText(name, value, temperature), temperature)).toBe(value);
      }),
    );
  });

  test('has a range whose ends are allowed as they are shown', () => {
    for (const name of settingNames)
      for (const temperature of ['C', 'F'] as const) {
        const { least, most } = settingDeclarations[name];
        const ends = [least, most].map((end) =>
          parseField(name, fieldText(name, end, temperature), temperature),
        );
        expect(ends).toEqual([least, most]);
      }
  });

  test('is a switch when its own rule forbids what lies between', () => {
    expect(settingNames.filter(isSwitch)).toEqual(['batchRunning', 'emptyWhenStoreFull', 'nightCooling']);
  });

  test('has a name in words, without its unit, that no other has', () => {
    expect(settingTitle('startDifferenceK')).toBe('Start difference');
    expect(settingTitle('fillsPerDay')).toBe('Fills per day');
    expect(settingTitle('stopDelayS')).toBe('Stop delay');
    const titles = settingNames.map(settingTitle);
    expect(new Set(titles).size).toBe(titles.length);
  });
});

describe('a draft', () => {
  test('sends what was changed and nothing else', () => {
    const draft = edited(edited(start, 'stopDelayS', 600), 'startDifferenceK', 2.5);
    expect(editedNames(draft)).toEqual(['startDifferenceK', 'stopDelayS']);
    expect(patchOf(draft)).toEqual({ startDifferenceK: 2.5, stopDelayS: 600 });
    expect(draftSettings(draft)).toEqual({ ...defaultSettings, startDifferenceK: 2.5, stopDelayS: 600 });
  });

  test('that was changed back is no change', () => {
    const draft = edited(start, 'startDifferenceK', 2.5);
    expect(edited(draft, 'startDifferenceK', defaultSettings.startDifferenceK)).toEqual(start);
    expect(withoutEdit(draft, 'startDifferenceK')).toEqual(start);
  });

  test('takes several values in, those that are so already leaving no mark', () => {
    const draft = withValues(start, { startDifferenceK: 3, stopDelayS: defaultSettings.stopDelayS });
    expect(patchOf(draft)).toEqual({ startDifferenceK: 3 });
  });

  const theirs = { ...defaultSettings, startDifferenceK: 4, drainTimeS: 700 };
  const mine = edited(edited(start, 'startDifferenceK', 2.5), 'stopDelayS', 600);

  test('tells what somebody else has set meanwhile', () => {
    expect(changedElsewhere(mine, theirs)).toEqual(['startDifferenceK', 'drainTimeS']);
    expect(currentDraft(mine, theirs)).toBe(mine);
  });

  test('keeps mine on top of theirs', () => {
    const kept = keepMine(mine, theirs);
    expect(kept.base).toBe(theirs);
    expect(patchOf(kept)).toEqual({ startDifferenceK: 2.5, stopDelayS: 600 });
  });

  test('takes theirs and keeps my other changes', () => {
    const taken = takeTheirs(mine, theirs);
    expect(taken.base).toBe(theirs);
    expect(patchOf(taken)).toEqual({ stopDelayS: 600 });
  });

  test('is over once its own values are in force', () => {
    const inForce = { ...defaultSettings, startDifferenceK: 2.5, stopDelayS: 600 };
    expect(changedElsewhere(mine, inForce)).toEqual([]);
    expect(currentDraft(mine, inForce)).toEqual(newDraft(inForce));
  });

  test('without changes follows what is in force', () => {
    expect(currentDraft(undefined, theirs)).toEqual(newDraft(theirs));
    expect(currentDraft(start, theirs)).toEqual(newDraft(theirs));
  });
});

describe('what stands against a draft', () => {
  const faults = (draft: Draft) => draftFaults(draft, 'C');

  test('is nothing for allowed values, up to the ends of the range', () => {
    expect(faults(edited(start, 'startDifferenceK', 30))).toEqual([]);
    expect(faults(edited(start, 'frostTemperatureC', 2))).toEqual([]);
  });

  test('is a value beyond an end, said in the chosen unit', () => {
    const draft = edited(start, 'drainTimeS', 14_401);
    expect(faults(draft)).toEqual([{ names: ['drainTimeS'], text: 'Allowed from 30 to 14400\u00a0s.' }]);
    expect(faults(edited(start, 'drainTimeS', 29)).length).toBe(1);
    const frost = edited(start, 'blindFrostAmbientC', 16);
    expect(draftFaults(frost, 'F')[0]?.text).toBe('Allowed from 37.4 to 59\u00a0°F.');
  });

  test('is a text that is no number, whatever else is changed', () => {
    const draft = withEdit(edited(start, 'stopDelayS', 600), 'drainTimeS', { text: 'soon', value: null });
    expect(faults(draft)).toEqual([{ names: ['drainTimeS'], text: 'Write a number.' }]);
    expect(draftSettings(draft).drainTimeS).toBe(defaultSettings.drainTimeS);
  });

  test('is every broken rule, at each setpoint that it ties', () => {
    const draft = edited(edited(start, 'stopDifferenceK', 5), 'frostTemperatureC', 8);
    expect(faults(draft).map(({ names }) => names)).toEqual([
      ['stopDifferenceK', 'startDifferenceK'],
      ['frostTemperatureC', 'frostReleaseC'],
    ]);
  });

  test('leaves a rule aside while one of its numbers is out of range', () => {
    const draft = edited(start, 'stopDifferenceK', 500);
    expect(faults(draft).map(({ text }) => text)).toEqual(['Allowed from 0.1 to 20\u00a0K.']);
  });

  test('is what the controller would refuse, and nothing else', () => {
    const change = fc.record({
      name: fc.constantFrom(...settingNames),
      share: fc.integer({ min: -100, max: 1100 }),
    });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 4 }), (changes) => {
        const draft = changes.reduce((made, { name, share }) => {
          const { least, most } = settingDeclarations[name];
          return edited(made, name, least + ((most - least) * share) / 1000);
        }, start);
        expect(faults(draft).length === 0).toBe(settingsSchema.safeParse(draftSettings(draft)).success);
      }),
    );
  });
});

describe('the search', () => {
  const found = (search: string, shown: 'all' | 'edited' | 'set' = 'all', draft = start) =>
    findSettings(search, shown, draft, draft.base).flatMap(({ names }) => names);

  test('finds words of names, sentences and purposes, all of them, in any order', () => {
    expect(found('start DIFFERENCE')).toContain('startDifferenceK');
    expect(found('difference warmer start')).toEqual(['startDifferenceK']);
    expect(found('legionella')).toEqual([]);
    expect(found('frost')).toEqual(
      expect.arrayContaining(['frostTemperatureC', 'blindFrostAmbientC', 'frostNightC']),
    );
  });

  test('shows every setpoint once when nothing is looked for', () => {
    expect([...found(' ')].sort()).toEqual([...settingNames].sort());
  });

  test('leaves my changes, or what stands otherwise than the default', () => {
    const base = { ...defaultSettings, fillTimeS: 500 };
    const draft = edited(newDraft(base), 'stopDelayS', 600);
    expect(found('', 'edited', draft)).toEqual(['stopDelayS']);
    expect(found('', 'set', draft)).toEqual(['stopDelayS', 'fillTimeS']);
  });
});
