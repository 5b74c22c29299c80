import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { marksOf } from '../../../desktop/ui/charts/marks.ts';
import { daysTable, dayTable } from '../../../desktop/ui/days/export-tables.ts';
import { csvText, fileName, rounded } from '../../../desktop/ui/format/csv.ts';
import { testDayCurves, testDays } from '../../support/fake-monitor/history.ts';

const metric = { temperature: 'C', heat: 'kWh' } as const;
const imperial = { temperature: 'F', heat: 'MJ' } as const;

describe('a table as CSV', () => {
  test('quotes what RFC 4180 wants quoted and ends each row with CRLF', () => {
    expect(csvText([['a,b', 'say "so"', 'two\nlines', null, 1.5, 'plain']])).toBe(
      '"a,b","say ""so""","two\nlines",,1.5,plain\r\n',
    );
  });
  test.each(['=1+1', '+1', '-1', '@sum', '\tx', '\rx'])('disarms the text %j', (text) => {
    const [[cell]] = parse(csvText([[text]])) as [[string]];
    expect(cell).toBe(`'${text}`);
  });
  test('leaves numbers alone, and what is no number is empty', () => {
    expect(csvText([[-3.5, Number.NaN, Number.POSITIVE_INFINITY, 0]])).toBe('-3.5,,,0\r\n');
  });
  test('keeps so many digits and no tail', () => {
    expect(rounded(0.1 + 0.2, 4)).toBe(0.3);
    expect(rounded(1.23456, 4)).toBe(1.2346);
  });
});

describe('the name of a file', () => {
  test('is plain, whatever a site is called', () => {
    expect(fileName(['../../Früh <x>', '2031-06-21'], 'csv')).toBe('Fr-h-x-2031-06-21.csv');
    expect(fileName(['', '..'], 'png')).toBe('flatwater.png');
    expect(fileName(['x'.repeat(300)], 'csv')).toHaveLength(94);
  });
});

describe('a day in a file', () => {
  const curves = testDayCurves('2031-06-21');
  const [head = [], first = []] = dayTable(curves, 'Atlantic/Azores', metric);
  test('has a row for each step, UTC times, the zone and units in its head', () => {
    const table = dayTable(curves, 'Atlantic/Azores', metric);
    expect(table).toHaveLength(curves.atMs.length + 1);
    expect(head.slice(0, 3)).toEqual(['Time (UTC)', 'Zone', 'Pan outlet [°C]']);
    expect(first.slice(0, 2)).toEqual(['2031-06-21T00:00:00.000Z', 'Atlantic/Azores']);
    expect(first.slice(-2)).toEqual(['Empty', expect.any(String)]);
    for (const row of table) expect(row).toHaveLength(head.length);
  });
  test('follows the chosen units', () => {
    const [imperialHead = [], row = []] = dayTable(curves, 'UTC', imperial);
    const air = head.indexOf('Air [°C]');
    expect(imperialHead[air]).toBe('Air [°F]');
    expect(row[air]).toBeCloseTo(Number(first[air]) * 1.8 + 32, 3);
    expect(imperialHead).toContain('Heat home so far [MJ]');
    expect(imperialHead).toContain('Sun [W/m²]');
    expect(imperialHead).toContain('Pump [%]');
  });
  test('leaves a failed sensor empty', () => {
    const sheet = head.indexOf('Sheet [°C]');
    const at = curves.atMs.findIndex((atMs) => new Date(atMs).toISOString().includes('T14:30'));
    expect(dayTable(curves, 'UTC', metric)[at + 1]?.[sheet]).toBeNull();
  });
});

test('all days in a file have one row each, with what is not whole never as 100 %', () => {
  const [day] = testDays;
  if (day === undefined) throw new Error('no test days');
  const [head = [], row = []] = daysTable([{ ...day, coveredFraction: 0.99999 }], 'UTC', metric);
  expect(head).toContain('Heat home [kWh]');
  expect(row).toHaveLength(head.length);
  expect(row[0]).toBe(day.day);
  expect(row[4]).toBeCloseTo((day.heatHomeJ ?? 0) / 3.6e6, 4);
  expect(row.at(-1)).toBe(99.9);
});

test('charts mark alarms, requests and settings, and nothing else', () => {
  const kinds = [
    'alarm-raised',
    'alarm-returned',
    'request-answered',
    'phase-changed',
    'settings-changed',
  ] as const;
  const events = kinds.map((kind, atMs) => ({ atMs, kind, text: '', values: {} }));
  expect(marksOf(events)).toEqual([
    { atMs: 0, kind: 'alarm-raised' },
    { atMs: 2, kind: 'request-answered' },
    { atMs: 4, kind: 'settings-changed' },
  ]);
});
