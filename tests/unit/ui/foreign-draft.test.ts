import { describe, expect, test } from 'vitest';
import {
  draftOfMap,
  faultsOf,
  guessedDraft,
  mapOf,
  unitsOf,
  withColumn,
  withRole,
} from '../../../desktop/ui/days/foreign/draft.ts';
import { guessRole, guessTimeFormat } from '../../../desktop/ui/days/foreign/guess-columns.ts';
import { en } from '../../../desktop/ui/text/en.ts';
import { channels } from '../../../shared-types/channels.ts';
import { type FileHead, importMapSchema } from '../../../shared-types/foreign-log.ts';

const head: FileHead = {
  ...{ encoding: 'utf-8', delimiter: ';', decimal: ',' },
  header: ['Time (UTC)', 'Pan outlet [°F]', 'Flow [gal/min]', 'Pump [%]', 'Note', 'Pan outlet [K]'],
  rows: [['21.6.2031 9:05', '100', '2', '50', '', '']],
};
const form = { headerLine: 1 };

describe('what columns are', () => {
  test('is guessed by their names and units, each thing once', () => {
    const draft = guessedDraft(head, 'Europe/Lisbon');
    expect(draft.columns.map(({ role, unit }) => [role, unit])).toEqual([
      ['time', ''],
      ['panOutletC', 'F'],
      ['flowLMin', 'gal/min'],
      ['pump', '%'],
      ['none', ''],
      ['none', ''],
    ]);
    expect([draft.zone, draft.format]).toEqual(['Europe/Lisbon', 'day-month-year']);
  });

  test('becomes a map, and comes back from one', () => {
    const draft = withRole(guessedDraft(head, 'UTC'), 4, 'drain');
    const map = importMapSchema.parse(mapOf(draft, form));
    expect(map).toEqual({
      headerLine: 1,
      time: { column: 'Time (UTC)', format: 'day-month-year', zone: 'UTC' },
      values: [
        { column: 'Pan outlet [°F]', channel: 'panOutletC', unit: 'F' },
        { column: 'Flow [gal/min]', channel: 'flowLMin', unit: 'gal/min' },
      ],
      pump: { column: 'Pump [%]', unit: '%' },
      drain: { column: 'Note' },
    });
    expect(draftOfMap(head, map)).toEqual(draft);
  });

  test('is not enough without a time, a value, and what tells of the pump', () => {
    const { faults } = en.foreign;
    const none = guessedDraft({ ...head, header: ['a', 'b'] }, 'UTC');
    expect(faultsOf(none)).toEqual([faults.noTime, faults.noValue, faults.noPump]);
    const power = withRole(withRole(none, 0, 'time'), 1, 'pumpPowerW');
    expect(faultsOf(power)).toEqual([]);
    expect(faultsOf(withRole(power, 0, 'pumpPowerW'))).toEqual([faults.noTime, faults.twice('Pump power')]);
    expect(faultsOf(withRole(withRole(none, 0, 'time'), 1, 'time'))).toContain(faults.twoTimes);
    expect(faultsOf(withRole(power, 1, 'panOutletC'))).toEqual([faults.noPump]);
  });

  test('takes the first unit of a role, and keeps another that was chosen', () => {
    const draft = withRole(guessedDraft(head, 'UTC'), 4, 'windMs');
    expect(draft.columns[4]).toEqual({ name: 'Note', role: 'windMs', unit: 'm/s' });
    expect(withColumn(draft, 4, { unit: 'mph' }).columns[4]?.unit).toBe('mph');
    expect(channels.every((channel) => unitsOf(channel).length > 0)).toBe(true);
    expect([unitsOf('time'), unitsOf('pump')]).toEqual([[], ['on-off', 'fraction', '%']]);
  });
});

test.each([
  ['Pan outlet [°C]', 'panOutletC', 'C'],
  ['storeBottomC', 'storeBottomC', ''],
  ['Sun (W/m²)', 'irradianceWM2', 'W/m2'],
  ['timestamp', 'time', ''],
  ['Pump', 'pump', ''],
  ['Heat home so far [kWh]', 'none', ''],
  ['<b>Time</b>', 'none', ''],
])('%s may be %s', (name, role, unit) => {
  expect(guessRole(name)).toEqual({ role, unit });
});

test.each([
  [['', '2031-06-21 14:05'], 'iso', false],
  [['6/12/2031 14:05', '6/13/2031 14:05'], 'month-day-year', false],
  [['13.6.2031 14:05', '1.7.2031 14:05'], 'day-month-year', false],
  [['12.12.2031 14:05'], 'day-month-year', true],
  [['1939730700'], 'unix-s', false],
  [['1939730700000'], 'unix-ms', false],
  [[], 'iso', false],
] as const)('times such as %j are %s', (cells, format, eitherWay) => {
  expect(guessTimeFormat(cells)).toEqual({ format, eitherWay });
});
