import { describe, expect, onTestFinished, test } from 'vitest';
import { guessDecimal, guessDelimiter, guessEncoding } from '../../../../sim/import/guess.ts';
import { reportText } from '../../../../sim/import/report-text.ts';
import { importRig, leastMap, lines, pump, roof } from './import-rig.ts';

function rig(zone?: string) {
  const made = importRig(zone);
  onTestFinished(() => made.folder.remove());
  return made;
}

describe('a foreign file', () => {
  test('with semicolons, decimal commas, local times and Windows-1252 is read by guessing', async () => {
    const text = lines('Zeit;Dach °C;Pumpe', '21.6.2031 9:05;68,5;1', '21.6.2031 09:06;69,5;0');
    const { report } = await rig().takeIn(Buffer.from(text, 'latin1'), {
      time: { column: 'Zeit', format: 'day-month-year', zone: 'Europe/Lisbon' },
      values: [{ ...roof, column: 'Dach °C' }],
      pump: { column: 'Pumpe', unit: 'on-off' },
    });
    expect(report).toMatchObject({ encoding: 'windows-1252', delimiter: ';', decimal: ',', rowsTaken: 2 });
    expect(report?.firstRows).toEqual([
      { atMs: Date.UTC(2031, 5, 21, 8, 5), values: { panOutletC: 68.5 }, pumpFraction: 1, drainOpen: null },
      { atMs: Date.UTC(2031, 5, 21, 8, 6), values: { panOutletC: 69.5 }, pumpFraction: 0, drainOpen: null },
    ]);
  });

  test('tells each place that it did not understand, and counts gaps', async () => {
    const { report } = await rig().takeIn(
      lines(
        'Time,Roof,Pump',
        '2031-06-21T08:00:00Z,40,on',
        '2031-06-21T08:01:00Z,=1+1,on',
        '2031-06-21T08:01:00Z,41,on',
        '2031-06-21T07:59:00Z,41,off',
        'soon,41,on',
        '2031-06-21T08:02:00Z,500,perhaps',
        '2031-06-21T08:06:00Z,,on',
        '2031-06-21T08:10:01Z,42,on',
        '1970-01-21T08:10:01Z,42,on',
        '2031-06-21T08:11:00Z,,',
      ),
    );
    expect(report?.places.map(({ line, cause, text }) => [line, cause, text])).toEqual([
      [3, 'not-a-number', '=1+1'],
      [4, 'duplicated', ''],
      [5, 'out-of-order', '2031-06-21T07:59:00Z'],
      [6, 'not-a-time', 'soon'],
      [7, 'out-of-range', '500'],
      [7, 'not-a-state', 'perhaps'],
      [7, 'no-value', ''],
      [10, 'far-away', '1970-01-21T08:10:01Z'],
      [11, 'no-value', ''],
    ]);
    expect(report).toMatchObject({ rows: 10, rowsTaken: 5, usualStepMs: 60_000, gaps: 2 });
    expect(report?.values).toEqual({ panOutletC: 4 });
  });

  test('names the hour that clocks repeat and refuses the one that they skip', async () => {
    const map = { ...leastMap, time: { column: 'Time', zone: 'Europe/Berlin' } };
    const autumn = rig('Europe/Berlin');
    const { report } = await autumn.takeIn(
      lines('Time,Roof,Pump', '2031-10-26 02:30,1,1', '2031-10-26 02:30,2,1', '2031-10-26 03:30,3,1'),
      map,
    );
    expect(report?.repeatedTimes).toBe(2);
    expect(autumn.records().map(({ input }) => new Date(input.nowMs).getUTCHours())).toEqual([0, 1, 2]);
    const spring = await rig().takeIn(lines('Time,Roof,Pump', '2031-03-30 02:30,1,1'), map);
    expect(spring.report?.misses).toEqual({ 'skipped-by-clock': 1 });
  });

  test('with a quote that never ends is told to where it was read', async () => {
    const { report } = await rig().takeIn(
      `Time,Roof,Pump\r\n2031-06-21T08:00:00Z,40,1\r\n"${'x'.repeat(120_000)}`,
    );
    expect(report).toMatchObject({ rowsTaken: 1, misses: { 'not-csv': 1 } });
  });

  test('of control characters stays text in the report', async () => {
    const { report } = await rig().takeIn(lines('Time,Roof,Pump', '\u001b[31mred,1,1'));
    if (report === undefined) throw new Error('not read');
    expect(reportText(report)).toContain(String.raw`"\u001b[31mred"`);
  });

  test('full of the same fault shows its first places only, and counts all', async () => {
    const { report } = await rig().takeIn(
      lines('Time,Roof,Pump', ...Array.from({ length: 30 }, () => `soon,${'x'.repeat(90)},1`)),
    );
    expect(report?.misses).toEqual({ 'not-a-time': 30 });
    expect(report?.places).toHaveLength(20);
  });

  test.each([
    ['', leastMap, 'the file is empty'],
    ['\r\n', leastMap, 'the file has no header line'],
    ['Time,Dach,Pump\r\n', leastMap, "no column is called 'Roof'; there are: Time, Dach, Pump"],
    ['Time,Roof,Roof,Pump\r\n', leastMap, "two columns are called 'Roof'"],
    [
      'Time,Roof,Pump\r\n',
      { ...leastMap, values: [{ ...roof, unit: 'W' }] },
      'panOutletC is not measured in W',
    ],
    ['Time,Roof,Pump\r\n', { ...leastMap, values: [roof, roof] }, 'two columns become panOutletC'],
    ['Time,Roof\r\n', leastMap, "no column is called 'Pump'; there are: Time, Roof"],
    [
      'Time,Roof\r\n',
      { time: leastMap.time, values: [roof] },
      'nothing tells when the pump ran: name the column of its state, of the flow, or of its power',
    ],
    [
      'Time,Roof,Pump\r\n',
      { ...leastMap, time: { column: 'Time', zone: 'Mars/Base' } },
      "no zone is called 'Mars/Base'",
    ],
  ])('%j is refused in words', async (content, map, fault) => {
    expect((await rig().takeIn(content, map)).faults).toContain(fault);
  });
});

test('the pump is understood as a state, a share or a percentage', async () => {
  const column = { column: 'Pump' };
  const head = 'Time,Roof,Pump';
  const at = (minute: number, cell: string) => `2031-06-21T08:0${minute}:00Z,40,${cell}`;
  const speeds = async (unit: string, ...cells: string[]) => {
    const map = { ...leastMap, pump: { ...column, unit } };
    const { report } = await rig().takeIn(lines(head, ...cells.map((cell, index) => at(index, cell))), map);
    return report?.firstRows.map(({ pumpFraction }) => pumpFraction);
  };
  expect(await speeds('on-off', 'ON', 'stopped', 'yes', '2')).toEqual([1, 0, 1, null]);
  expect(await speeds('fraction', '0', '0.25', '1', '1.01')).toEqual([0, 0.25, 1, null]);
  expect(await speeds('%', '100', '40', '101', 'full')).toEqual([1, 0.4, null, null]);
});

test('a drain counts where the row tells of the pump as well', async () => {
  const made = rig();
  await made.takeIn(
    lines(
      'Time,Roof,Pump,Drain',
      '2031-06-21T08:00:00Z,40,1,closed',
      '2031-06-21T08:01:00Z,40,0,open',
      '2031-06-21T08:02:00Z,40,,closed',
    ),
    { ...leastMap, pump, drain: { column: 'Drain' } },
  );
  expect(made.records().map(({ input, outcome }) => [input.feedback, outcome.outputs.drainOpen])).toEqual([
    [{ pumpFraction: 1, drainOpen: false, ageMs: 0 }, false],
    [{ pumpFraction: 0, drainOpen: true, ageMs: 0 }, true],
    [{ pumpFraction: 0, drainOpen: true, ageMs: 60_000 }, true],
  ]);
});

test('what a file looks like is guessed from its beginning', () => {
  expect(guessEncoding(new Uint8Array([0xff, 0xfe, 0x41, 0]))).toBe('utf-16le');
  expect(guessEncoding(new TextEncoder().encode('°').subarray(0, 1))).toBe('utf-8');
  expect(guessDelimiter('a\tb,c\n1\t2,3')).toBe('\t');
  expect(guessDelimiter('one column\n1')).toBe(',');
  expect(guessDecimal('a;b\n1,5;2', ';')).toBe(',');
  expect(guessDecimal('a;b\n1,5;2.5', ';')).toBe('.');
});
