import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeSettings } from '../../../../controller/daemon/change-settings.ts';
import { settingTitle } from '../../../../shared-types/setting-title.ts';
import {
  defaultSettings,
  settingCouplings,
  settingDeclarations,
  settingNames,
} from '../../../../shared-types/settings.ts';

describe('a change of settings', () => {
  const rows = settingNames.flatMap((name) => {
    const { least, most } = settingDeclarations[name];
    return [
      [name, least - 1],
      [name, most + 1],
      [name, Number.NaN],
    ] as const;
  });

  it.each(rows)('of %s to %d is refused, with what is allowed', (name, value) => {
    const before = { ...defaultSettings };
    const change = changeSettings(before, { [name]: value });
    expect(change).toMatchObject({ kind: 'refused' });
    expect(change.kind === 'refused' && change.text).toContain(`${settingTitle(name)} is allowed from `);
    expect(before).toEqual(defaultSettings);
  });

  it('is refused as a whole, with every reason', () => {
    const change = changeSettings(defaultSettings, { startsPerHour: 0, dryRunS: 21, leastOnS: 60 });
    expect(change).toEqual({
      kind: 'refused',
      text: 'Starts per hour is allowed from 1 to 30 per h. Dry run time is allowed from 5 to 20 s.',
    });
  });

  it('is told in words, with units where there are any', () => {
    const change = changeSettings(defaultSettings, { startDifferenceK: 2, storeLimitC: 62, nightCooling: 1 });
    expect(change).toMatchObject({
      kind: 'changed',
      text: 'start difference from 1 to 2 K, store limit from 60 to 62 °C, night cooling from 0 to 1',
    });
  });

  it('that breaks rules between settings is refused with each of them', () => {
    const change = changeSettings(defaultSettings, {
      stopDifferenceK: defaultSettings.startDifferenceK,
      frostReleaseC: defaultSettings.frostTemperatureC,
    });
    const texts = settingCouplings
      .filter(({ names }) => names.includes('stopDifferenceK') || names.includes('frostReleaseC'))
      .map(({ text }) => text);
    for (const text of texts) expect(change.kind === 'refused' && change.text).toContain(text);
  });

  it('either takes everything that was asked, or nothing', () => {
    const patchDraw = fc.dictionary(
      fc.constantFrom(...settingNames),
      fc.integer({ min: -10, max: 2000 }).map((n) => n / 10),
      { maxKeys: 4 },
    );
    fc.assert(
      fc.property(patchDraw, (patch) => {
        const change = changeSettings(defaultSettings, patch);
        if (change.kind !== 'changed') return;
        expect(change.settings).toEqual({ ...defaultSettings, ...patch });
        for (const { holds } of settingCouplings) expect(holds(change.settings)).toBe(true);
      }),
    );
  });
});
