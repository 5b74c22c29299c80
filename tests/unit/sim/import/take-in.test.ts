import { existsSync } from 'node:fs';
import { describe, expect, onTestFinished, test } from 'vitest';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import { openLogWriter } from '../../../../controller/log/writer.ts';
import { dayCurvesSchema, daySummarySchema, logRecordSchema } from '../../../../shared-types/log.ts';
import { replayDay } from '../../../../sim/replay/replay-day.ts';
import { logRecord } from '../../../support/log-records.ts';
import { importRig, leastMap, lines, pump, roof } from './import-rig.ts';

function rig(zone?: string) {
  const made = importRig(zone);
  onTestFinished(() => made.folder.remove());
  return made;
}

const head = 'Time,Roof,Pump';
/** A row of the minute, counted from 8:00 UTC. */
const row = (minute: number, roofC: number | string, on: number | string) =>
  `${new Date(Date.UTC(2031, 5, 21, 8, minute)).toISOString()},${roofC},${on}`;
const minutes = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, index) => row(from + index, 40 + from + index, 1));

describe('days of another logger', () => {
  test('become days of a log of their own, with what nobody told as unknown', async () => {
    const made = rig();
    const { report } = await made.takeIn(lines(head, ...minutes(0, 3)));
    expect(report).toMatchObject({
      days: 1,
      daysChanged: 1,
      stepsAdded: 4,
      stepsChanged: 0,
      daysWithHeat: 0,
    });
    const [day] = made.read((reader) => reader.days());
    expect(daySummarySchema.parse(day)).toEqual({
      day: '2031-06-21',
      steps: 4,
      firstMs: Date.UTC(2031, 5, 21, 8),
      lastMs: Date.UTC(2031, 5, 21, 8, 3),
      heatHomeJ: null,
      heatLostJ: null,
      electricityJ: null,
      pumpRunS: 180,
      starts: 0,
      fills: null,
      alarms: null,
      coveredFraction: 180_000 / 86_400_000,
      imported: true,
    });
    const records = made.records();
    for (const record of records) logRecordSchema.parse(record);
    expect(records[1]).toMatchObject({
      step: 2,
      input: {
        elapsedMs: 60_000,
        readings: { panOutletC: { value: 41, ageMs: 0 } },
        feedback: { pumpFraction: 1, drainOpen: null, ageMs: 0 },
      },
      outcome: { phase: 'unknown', outputs: { pumpFraction: 1 }, reasons: { pump: 'unknown' } },
    });
    expect(records[0]?.input.elapsedMs).toBeNull();
    const curves = dayCurvesSchema.parse(made.read((reader) => reader.day('2031-06-21')));
    expect(curves).toMatchObject({ phases: [], heatTodayJ: [null, null, null, null] });
    expect(curves.series.panOutletC).toEqual([40, 41, 42, 43]);
  });

  test('keep the loop with just the sensors that the file had', async () => {
    const made = rig();
    await made.takeIn(lines('Time,Roof,Sun,Pump', '2031-06-21T08:00:00Z,40,700,1'), {
      ...leastMap,
      values: [roof, { column: 'Sun', channel: 'longWaveWM2', unit: 'W/m2' }],
    });
    const [record] = made.records();
    const site = made.read((reader) => reader.site(record?.siteRevision ?? 0));
    expect(site?.name).toBe(`${made.site.name}-imported`);
    expect(site?.title).toBe(`${made.site.title} (imported)`);
    expect(Object.keys(site?.sensors ?? {}).sort()).toEqual(['longWaveWM2', 'panOutletC', 'storeBottomC']);
    expect(made.read((reader) => reader.settings(record?.settingsRevision ?? 0))).not.toBeNull();
  });

  test('add nothing when the same file comes again, and say so', async () => {
    const made = rig();
    const file = lines(head, ...minutes(0, 9), row(60, '', 1), row(90, 50, ''));
    const first = await made.takeIn(file);
    expect(first.report?.stepsAdded).toBe(11);
    expect(first.report?.misses).toEqual({ 'no-pump': 1 });
    const before = made.records();
    const again = await made.takeIn(file);
    expect(again.report).toMatchObject({ daysChanged: 0, stepsAdded: 0, stepsChanged: 0, rowsTaken: 11 });
    expect(made.records()).toEqual(before);
  });

  test('of overlapping files grow together, in whichever order the files come', async () => {
    const [made, other] = [rig(), rig()];
    const [early, late] = [lines(head, ...minutes(0, 6)), lines(head, ...minutes(4, 9))];
    await made.takeIn(late);
    const { report } = await made.takeIn(early);
    expect(report).toMatchObject({ daysChanged: 1, stepsAdded: 4 });
    await other.takeIn(early);
    await other.takeIn(late);
    expect(made.records()).toEqual(other.records());
    expect(made.records()).toHaveLength(10);
  });

  test('keep what the log holds of an instant, or take the newer value when that is asked for', async () => {
    const made = rig();
    await made.takeIn(lines(head, row(0, 40, 1), row(1, 41, 1)));
    const kept = await made.takeIn(lines(head, row(0, 99, 1), row(1, 41, 1)));
    expect(kept.report).toMatchObject({ stepsAdded: 0, stepsChanged: 0 });
    const value = () => made.records()[0]?.input.readings.panOutletC?.value;
    expect(value()).toBe(40);
    const replaced = await made.takeIn(lines(head, row(0, 99, 1)), leastMap, { clash: 'replace' });
    expect(replaced.report).toMatchObject({ stepsAdded: 0, stepsChanged: 1 });
    expect(value()).toBe(99);
  });

  test('of two files, one with flow and one with temperatures, stand in the same steps', async () => {
    const made = rig();
    await made.takeIn(lines(head, row(0, 40, 1)));
    const flow = { column: 'Roof', channel: 'flowLMin', unit: 'L/min' };
    const { report } = await made.takeIn(lines(head, row(0, 6, 1)), { ...leastMap, values: [flow] });
    expect(report).toMatchObject({ stepsAdded: 0, stepsChanged: 1 });
    expect(made.records()[0]?.input.readings).toEqual({
      panOutletC: { value: 40, ageMs: 0 },
      flowLMin: { value: 6, ageMs: 0 },
    });
  });

  test('are looked at without being kept', async () => {
    const made = rig();
    await made.takeIn(lines(head, row(0, 40, 1)));
    const { report } = await made.takeIn(lines(head, row(0, 40, 1), row(1, 41, 1)), leastMap, {
      write: false,
    });
    expect(report?.stepsAdded).toBe(1);
    expect(made.records()).toHaveLength(1);
    const fresh = rig();
    await fresh.takeIn(lines(head, row(0, 40, 1)), leastMap, { write: false });
    expect(existsSync(fresh.path)).toBe(false);
  });

  test.each([0.1, 0.6, 1])('that are given up at %d of the way leave nothing', async (endAt) => {
    const made = rig();
    const file = lines(head, ...minutes(0, 9), ...minutes(1500, 1509));
    const { faults } = await made.takeIn(file, leastMap, { goOn: (done) => done < endAt });
    expect(faults).toEqual(['it was given up; nothing was kept']);
    expect(existsSync(made.path)).toBe(false);
    await made.takeIn(lines(head, row(0, 40, 1)));
    await made.takeIn(file, leastMap, { goOn: (done) => done < endAt });
    expect(made.records()).toHaveLength(1);
  });

  test('never go into the log of a controller, nor a controller into theirs', async () => {
    const made = rig();
    const writer = openLogWriter(made.path);
    writer.startRun('engine 1', 0);
    writer.append(logRecord(1));
    writer.close();
    const { faults } = await made.takeIn(lines(head, row(0, 40, 1)));
    expect(faults[0]).toContain('the log belongs to a controller');
    const other = rig();
    await other.takeIn(lines(head, row(0, 40, 1)));
    const intruder = openLogWriter(other.path);
    intruder.startRun('engine 1', 0);
    intruder.append(logRecord(1));
    expect(intruder.remark).toContain('days of another logger');
    intruder.close();
    expect(other.records()).toHaveLength(1);
  });

  test('cannot be decided again, and the replay says why', async () => {
    const made = rig();
    await made.takeIn(lines(head, row(0, 40, 1)));
    expect(() => made.read((reader) => replayDay(reader, '2031-06-21'))).toThrow(
      'taken in from another logger: nothing was decided then',
    );
  });

  test('are cut in the zone of the loop, also where the clocks change', async () => {
    const made = rig('Europe/Lisbon');
    // Summer time begins on 30 March 2031 at 1:00 UTC: a day of 23 hours.
    const times = [
      '2031-03-29T23:59:00Z',
      '2031-03-30T00:00:00Z',
      '2031-03-30T22:59:00Z',
      '2031-03-30T23:00:00Z',
    ];
    await made.takeIn(lines(head, ...times.map((time) => `${time},40,1`)));
    expect(made.read((reader) => reader.days()).map(({ day, steps }) => [day, steps])).toEqual([
      ['2031-03-29', 1],
      ['2031-03-30', 2],
      ['2031-03-31', 1],
    ]);
  });
});

describe('values of another logger', () => {
  test('hold over empty cells for four usual steps, and their age tells', async () => {
    const made = rig();
    await made.takeIn(lines(head, row(0, 40, 1), ...[1, 2, 3, 4, 5].map((minute) => row(minute, '', 1))));
    const readings = made.records().map(({ input }) => input.readings.panOutletC);
    expect(readings).toEqual([
      ...[0, 1, 2, 3, 4].map((minute) => ({ value: 40, ageMs: minute * 60_000 })),
      undefined,
    ]);
  });

  test.each([
    [
      'flowLMin',
      'L/min',
      (share: number, { ratedFlowLMin }: { ratedFlowLMin: number }) => share * 0.05 * ratedFlowLMin,
    ],
    [
      'pumpPowerW',
      'W',
      (share: number, { ratedPowerW }: { ratedPowerW: number }) => share * 0.2 * ratedPowerW,
    ],
  ] as const)('of %s tell whether the pump ran where nothing else does', async (channel, unit, at) => {
    const made = rig();
    const { pump: rated } = made.site;
    const map = { time: { column: 'Time' }, values: [{ column: 'Roof', channel, unit }] };
    await made.takeIn(
      lines(head, row(0, at(1, rated), ''), row(1, at(1.001, rated), ''), row(2, 0, '')),
      map,
    );
    expect(made.records().map(({ outcome }) => outcome.outputs.pumpFraction)).toEqual([0, 1, 0]);
    expect(made.records().every(({ input }) => input.feedback === null)).toBe(true);
  });

  const meterMap = {
    time: { column: 'Time' },
    values: [
      roof,
      { column: 'Cold', channel: 'storeBottomC', unit: 'C' },
      { column: 'Flow', channel: 'flowLMin', unit: 'L/min' },
      { column: 'Power', channel: 'pumpPowerW', unit: 'W' },
    ],
    pump,
  };
  const meterHead = 'Time,Roof,Pump,Cold,Flow,Power';

  test('of flow and both ends give the heat as the meter counts it', async () => {
    const made = rig();
    const { report } = await made.takeIn(
      lines(
        meterHead,
        `${row(0, 50, 0)},30,0,0`,
        `${row(1, 50, 1)},30,6,40`,
        `${row(2, 60, 1)},30,6,50`,
        `${row(3, 20, 1)},30,6,60`,
        `${row(4, 20, 0)},30,0,0`,
      ),
      meterMap,
    );
    const [weak, strong, loss] = [50, 60, 20].map((hotC) => streamHeatW(6, hotC, 30, 30)) as [
      number,
      number,
      number,
    ];
    const [day] = made.read((reader) => reader.days());
    const spans = [weak / 2, (weak + strong) / 2, (strong + loss) / 2, loss / 2].map((rateW) => rateW * 60);
    const sum = (some: number[]) => some.reduce((a, b) => a + b, 0);
    expect(day?.heatHomeJ).toBeCloseTo(sum(spans.filter((heatJ) => heatJ > 0)), 6);
    expect(day?.heatLostJ).toBeCloseTo(-sum(spans.filter((heatJ) => heatJ < 0)), 6);
    expect(day?.electricityJ).toBe((50 + 60) * 60);
    expect(day).toMatchObject({ pumpRunS: 180, starts: 1 });
    expect(report?.daysWithHeat).toBe(1);
    const curves = made.read((reader) => reader.day('2031-06-21'));
    expect(curves.heatTodayJ[0]).toBe(0);
    expect(curves.heatTodayJ.at(-1)).toBe(day?.heatHomeJ);
  });

  test('whose sensor failed half-way tell no heat, and none is told without the pump having had a flow', async () => {
    const made = rig();
    await made.takeIn(
      lines(
        meterHead,
        ...Array.from({ length: 20 }, (_, minute) => `${row(minute, minute < 10 ? 50 : '', 1)},30,6,40`),
      ),
      meterMap,
    );
    const [day] = made.read((reader) => reader.days());
    expect(day).toMatchObject({ heatHomeJ: null, electricityJ: 19 * 60 * 40 });
    const still = rig();
    await still.takeIn(lines(meterHead, `${row(0, 50, 0)},30,0,0`, `${row(1, 50, 0)},30,0,0`), meterMap);
    expect(still.read((reader) => reader.days())[0]).toMatchObject({
      heatHomeJ: 0,
      electricityJ: 0,
      starts: 0,
    });
  });

  test('count nothing across a hole of more than four usual steps', async () => {
    const made = rig();
    const at = (minute: number) => `${row(minute, 50, 1)},30,6,40`;
    await made.takeIn(lines(meterHead, ...[0, 1, 2, 6, 11].map(at)), meterMap);
    const [day] = made.read((reader) => reader.days());
    // The middle distance is 4 min here, and all of them count.
    expect(day?.pumpRunS).toBe(11 * 60);
    const holed = rig();
    await holed.takeIn(lines(meterHead, ...[0, 1, 2, 3, 4, 8, 13].map(at)), meterMap);
    expect(holed.read((reader) => reader.days())[0]).toMatchObject({
      pumpRunS: 8 * 60,
      coveredFraction: (8 * 60) / 86_400,
    });
  });
});
