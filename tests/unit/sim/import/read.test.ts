import { writeFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { guessDecimal, guessDelimiter, guessEncoding } from '../../../../sim/import/guess.ts';
import { importMapSchema } from '../../../../sim/import/map.ts';
import { readForeignCsv } from '../../../../sim/import/read.ts';
import { reportText } from '../../../../sim/import/report-text.ts';
import type { ForeignRow } from '../../../../sim/import/taker.ts';
import { temporaryFolder } from '../../../support/temporary.ts';

const folder = temporaryFolder('import');
afterAll(() => folder.remove());

const roof = { column: 'Roof', channel: 'panOutletC', unit: 'C' };
const isoMap = { time: { column: 'Time' }, values: [roof] };

async function read(content: string | Uint8Array, map: unknown = isoMap) {
  const path = folder.file('foreign.csv');
  writeFileSync(path, content);
  const rows: ForeignRow[] = [];
  const outcome = await readForeignCsv(path, importMapSchema.parse(map), { onRow: (row) => rows.push(row) });
  if (!outcome.ok) return { faults: outcome.faults, rows };
  return { report: outcome.report, rows, faults: [] };
}

const lines = (...rows: string[]) => `${rows.join('\r\n')}\r\n`;

describe('a foreign file', () => {
  test('with semicolons, decimal commas, local times and Windows-1252 is read by guessing', async () => {
    const text = lines('Zeit;Dach °C', '21.6.2031 9:05;68,5', '21.6.2031 09:06;69,5');
    const { report, rows } = await read(Buffer.from(text, 'latin1'), {
      time: { column: 'Zeit', format: 'day-month-year', zone: 'Europe/Lisbon' },
      values: [{ ...roof, column: 'Dach °C' }],
    });
    expect(report).toMatchObject({ encoding: 'windows-1252', delimiter: ';', decimal: ',', rowsTaken: 2 });
    expect(rows).toEqual([
      { atMs: Date.UTC(2031, 5, 21, 8, 5), values: { panOutletC: 68.5 } },
      { atMs: Date.UTC(2031, 5, 21, 8, 6), values: { panOutletC: 69.5 } },
    ]);
  });

  test('tells each place that it did not understand, and counts gaps', async () => {
    const { report, rows } = await read(
      lines(
        'Time,Roof',
        '2031-06-21T08:00:00Z,40',
        '2031-06-21T08:01:00Z,=1+1',
        '2031-06-21T08:01:00Z,41',
        '2031-06-21T07:00:00Z,41',
        'soon,41',
        '2031-06-21T08:02:00Z,500',
        '2031-06-21T08:06:00Z,',
        '2031-06-21T08:10:01Z,42',
      ),
    );
    expect(report?.places.map(({ line, cause, text }) => [line, cause, text])).toEqual([
      [3, 'not-a-number', '=1+1'],
      [4, 'duplicated', '2031-06-21T08:01:00Z'],
      [5, 'out-of-order', '2031-06-21T07:00:00Z'],
      [6, 'not-a-time', 'soon'],
      [7, 'out-of-range', '500'],
    ]);
    expect(report).toMatchObject({ rows: 8, rowsTaken: 5, usualStepMs: 60_000, gaps: 1 });
    expect(report?.values).toEqual({ panOutletC: 2 });
    expect(rows).toHaveLength(5);
  });

  test('names the hour that clocks repeat and refuses the one that they skip', async () => {
    const map = { ...isoMap, time: { column: 'Time', zone: 'Europe/Berlin' } };
    const autumn = await read(
      lines('Time,Roof', '2031-10-26 02:30,1', '2031-10-26 02:30,2', '2031-10-26 03:30,3'),
      map,
    );
    expect(autumn.report?.repeatedTimes).toBe(2);
    expect(autumn.rows.map(({ atMs }) => new Date(atMs).getUTCHours())).toEqual([0, 1, 2]);
    const spring = await read(lines('Time,Roof', '2031-03-30 02:30,1'), map);
    expect(spring.report?.misses).toEqual({ 'skipped-by-clock': 1 });
  });

  test('with a quote that never ends is told to where it was read', async () => {
    const { report } = await read(`Time,Roof\r\n2031-06-21T08:00:00Z,40\r\n"${'x'.repeat(120_000)}`);
    expect(report).toMatchObject({ rowsTaken: 1, misses: { 'not-csv': 1 } });
  });

  test('of control characters stays text in the report', async () => {
    const { report } = await read(lines('Time,Roof', '\u001b[31mred,1'));
    if (report === undefined) throw new Error('not read');
    expect(reportText(report)).toContain(String.raw`"\u001b[31mred"`);
  });

  test.each([
    ['', isoMap, 'the file is empty'],
    ['\r\n', isoMap, 'the file has no header line'],
    ['Time,Dach\r\n', isoMap, "no column is called 'Roof'; there are: Time, Dach"],
    ['Time,Roof,Roof\r\n', isoMap, "two columns are called 'Roof'"],
    ['Time,Roof\r\n', { ...isoMap, values: [{ ...roof, unit: 'W' }] }, 'panOutletC is not measured in W'],
    ['Time,Roof\r\n', { ...isoMap, values: [roof, roof] }, 'two columns become panOutletC'],
    [
      'Time,Roof\r\n',
      { ...isoMap, time: { column: 'Time', zone: 'Mars/Base' } },
      "no zone is called 'Mars/Base'",
    ],
  ])('%j is refused in words', async (content, map, fault) => {
    expect((await read(content, map)).faults).toContain(fault);
  });
});

test('what a file looks like is guessed from its beginning', () => {
  expect(guessEncoding(new Uint8Array([0xff, 0xfe, 0x41, 0]))).toBe('utf-16le');
  expect(guessEncoding(new TextEncoder().encode('°').subarray(0, 1))).toBe('utf-8');
  expect(guessDelimiter('a\tb,c\n1\t2,3')).toBe('\t');
  expect(guessDelimiter('one column\n1')).toBe(',');
  expect(guessDecimal('a;b\n1,5;2', ';')).toBe(',');
  expect(guessDecimal('a;b\n1,5;2.5', ';')).toBe('.');
});
