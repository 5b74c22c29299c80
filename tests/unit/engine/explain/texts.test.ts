import { describe, expect, it } from 'vitest';
import { alarmText } from '../../../../controller/engine/explain/alarm-text.ts';
import { againstStore, duration, figure } from '../../../../controller/engine/explain/figure.ts';
import { reasonText } from '../../../../controller/engine/explain/reason-text.ts';
import { alarmCatalogue } from '../../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../../shared-types/alarms.ts';
import type { ReasonCode } from '../../../../shared-types/reasons.ts';

describe('the numbers of a sentence', () => {
  it('have the decimals asked for, and a question mark where they are not known', () => {
    expect([figure({ a: 1.26 }, 'a'), figure({ a: 1.26 }, 'a', 2), figure({}, 'a')]).toEqual([
      '1.3',
      '1.26',
      '?',
    ]);
    expect(figure({ a: Number.NaN }, 'a')).toBe('?');
  });

  it('stand above or below the store bottom', () => {
    expect([againstStore({ a: 2 }, 'a'), againstStore({ a: -2 }, 'a'), againstStore({ a: 0 }, 'a')]).toEqual([
      '2.0 K above the store bottom',
      '2.0 K below the store bottom',
      '0.0 K above the store bottom',
    ]);
    expect(againstStore({}, 'a')).toBe('? K above the store bottom');
  });

  it('are minutes from two of them on', () => {
    const told = [119, 120, 150].map((seconds) => duration({ a: seconds }, 'a'));
    expect([...told, duration({}, 'a')]).toEqual(['119 s', '2 min', '3 min', '?']);
  });
});

describe('the numbers of an alarm', () => {
  it.each<[AlarmCode, Record<string, number>, string]>([
    ['frost-danger', { panC: 2 }, ' The pan is at 2.0 °C.'],
    ['frost-danger', {}, ''],
    ['not-emptying', { levelMm: 12 }, ' 12 mm of water stand in it.'],
    ['not-emptying', {}, ''],
    ['fill-locked', { failures: 3 }, ' 3 failures in a row.'],
    ['flow-low', { flowLMin: 7, fullFlowLMin: 20 }, ' 7.0 of 20.0 L/min pass.'],
    ['poor-contact', { excessK: 9 }, ' It stands 9.0 K higher above the water than the heat explains.'],
    ['leak', { lackingMm: 14, rateMmH: 3 }, ' The reservoir lacks 14 mm.'],
    ['leak', { rateMmH: 3 }, ' The resting pan sinks by 3.0 mm an hour.'],
    ['reservoir-low', { levelMm: 20, neededMm: 80 }, ' It stands at 20 mm; a fill needs 80 mm.'],
    ['reservoir-low', { levelMm: 20 }, ' It stands at 20 mm.'],
    ['liner-hot', { panC: 71, linerHotC: 70 }, ' The pan is at 71 °C; too hot from 70 °C on.'],
    ['liner-not-cooled', { panC: 81, linerLimitC: 80 }, ' The pan is at 81 °C; the liner stands 80 °C.'],
    ['scald-caution', { storeC: 61 }, ' Its hottest sensor is at 61 °C.'],
    ['frost-season-near', { days: 9 }, ' It begins in 9 days.'],
    ['frost-season-near', {}, ''],
    ['store-hot', { storeC: 71, maximumC: 70 }, ' It is at 71 °C; 70 °C is the most it stands.'],
    ['sensor-failed', {}, ''],
  ])('%s of %o', (code, values, text) => {
    const { title } = alarmCatalogue[code];
    expect(alarmText(code, values)).toBe(`${title}.${text}`);
    expect(alarmText(code, values, 'Pan inlet')).toBe(`${title}: Pan inlet.${text}`);
  });
});

describe('a sentence with a part that may be missing', () => {
  it.each<[ReasonCode, Record<string, number>, string]>([
    [
      'difference-doubted',
      {},
      'A sensor of pan or store bottom is in doubt; nothing is harvested on its word.',
    ],
    [
      'difference-doubted',
      { differenceK: -3 },
      'A sensor of pan or store bottom is in doubt: the pan reads 3.0 K below the store bottom; nothing is harvested on its word.',
    ],
    ['filling-for-heat', { filledS: 30, fillTimeS: 420 }, 'Filling the pan for 30 s of about 7 min.'],
    ['filling-for-heat', { differenceK: 12 }, 'Filling: the sheet is 12.0 K above the store bottom.'],
    [
      'emptying-no-gain',
      { idleMin: 90, airFellK: 3.26 },
      'Emptying: the air has fallen by 3.3 K, so the weather turns; the pan’s heat comes home.',
    ],
    [
      'emptying-no-gain',
      { idleMin: 90 },
      'Emptying: the pan has gained nothing for 90 min; its heat comes home.',
    ],
    [
      'emptying-no-gain',
      { differenceK: 2 },
      'Emptying: the pan is only 2.0 K above the store bottom; its heat comes home.',
    ],
    ['sensors-failed', { storeFailed: 1 }, 'The store bottom cannot be measured; the loop is kept safe.'],
    ['sensors-failed', { storeFailed: 0 }, 'The pan cannot be measured; the loop is kept safe.'],
    ['exercising-pump', {}, 'The pump turns briefly after it has stood for long.'],
    ['exercising-pump', { idleH: 168 }, 'The pump turns briefly after it has stood for 168 h.'],
    ['frost-season', {}, 'Frost season: a pan that cannot be emptied is not filled.'],
    [
      'frost-season',
      { panC: 9 },
      'Frost season, the pan at 9.0 °C: a pan that cannot be emptied is not filled.',
    ],
    ['reservoir-low', { levelMm: 20 }, 'The reservoir stands at 20 mm.'],
    ['reservoir-low', { levelMm: 20, neededMm: 80 }, 'The reservoir stands at 20 mm; a fill needs 80 mm.'],
    ['water-lost', {}, 'The pan lost its water.'],
    ['water-lost', { levelMm: 3 }, 'The pan lost its water; 3 mm are left.'],
    ['dry-running', { dryS: 20 }, 'The pump moved no water for 20 s and was stopped.'],
    ['dry-running', { dryS: 20, noFlowKind: 0 }, 'The pump moved no water for 20 s and was stopped.'],
    [
      'dry-running',
      { dryS: 20, noFlowKind: 2 },
      'The pump moved no water for 20 s and was stopped: the pump turns in air.',
    ],
  ])('%s of %o: %s', (code, values, text) => {
    expect(reasonText(code, values)).toBe(text);
  });
});
