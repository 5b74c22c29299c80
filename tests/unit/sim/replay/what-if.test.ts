import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { importedEngine } from '../../../../controller/log/layout.ts';
import { type LogReader, logPath } from '../../../../controller/log/log.ts';
import { openLogReader } from '../../../../controller/log/reader.ts';
import type { Decision, EngineInput } from '../../../../shared-types/engine.ts';
import type { LogRecord } from '../../../../shared-types/log.ts';
import type { Settings } from '../../../../shared-types/settings.ts';
import { whatIfReportSchema } from '../../../../shared-types/what-if.ts';
import { recordHistory } from '../../../../sim/history.ts';
import { createDecisionCounter } from '../../../../sim/replay/decision-count.ts';
import { openLoopInput } from '../../../../sim/replay/open-loop-input.ts';
import { remarksOn } from '../../../../sim/replay/settings-remarks.ts';
import { whatIf } from '../../../../sim/replay/what-if.ts';
import { fakeDecision } from '../../../support/fake-engine.ts';
import { logRecord } from '../../../support/log-records.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../../../support/temporary.ts';

const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
const hour = (hours: number) => Date.UTC(2031, 5, 21) + hours * 3_600_000;
const day = '2031-06-21';

let folder: TemporaryFolder;
let reader: LogReader;
let settings: Settings;
beforeAll(() => {
  folder = temporaryFolder('what-if');
  const options = { dataFolder: folder.path, seed: 1, kinds: ['clear'], site } as const;
  recordHistory({ ...options, fromMs: hour(-1), toMs: hour(11) });
  recordHistory({ ...options, fromMs: hour(11.5), toMs: hour(22) });
  reader = openLogReader(logPath(folder.path, site.name));
  settings = reader.settings(1) as Settings;
});
afterAll(() => {
  reader.close();
  folder.remove();
});

describe('a logged day decided under other settings', () => {
  it('parts nowhere under the settings of that day, over a restart as well', () => {
    const report = whatIf(reader, day, settings);
    expect(report).toMatchObject({ differences: 0, firstDifference: null, settingsThen: settings });
    expect(report?.other).toEqual(report?.base);
    expect(report?.steps).toBe([...reader.records(day)].length);
  });

  it('counts what the controller asked for that day', () => {
    const summary = reader.days().find((kept) => kept.day === day);
    const base = whatIf(reader, day, settings)?.base;
    expect(base).toMatchObject({ starts: summary?.starts, fills: summary?.fills });
    expect(Math.abs((base?.pumpRunS ?? 0) - (summary?.pumpRunS ?? 0))).toBeLessThanOrEqual(60);
  });

  it('tells where and why another fill difference parts from it', () => {
    const report = whatIf(reader, day, { ...settings, fillDifferenceK: 12 });
    const { base, other } = report?.firstDifference ?? {};
    expect(base).toMatchObject({ phase: 'filling', pumpFraction: 1 });
    expect(base?.reason).toMatch(/^Filling/);
    expect(other).toMatchObject({ phase: 'empty', pumpFraction: 0 });
    expect(other?.reason).toContain('12.0 K');
    expect(report?.other.pumpRunS).toBeLessThan(report?.base.pumpRunS ?? 0);
    expect(whatIfReportSchema.safeParse(report).success).toBe(true);
  });

  it('takes the answers of a loop that was driven otherwise for no fault', () => {
    const report = whatIf(reader, day, { ...settings, fillDifferenceK: 1 });
    const { base, other } = report ?? {};
    // Filled earlier than the loop was: for minutes its flow meter tells of no water.
    expect(other?.fills).toBeGreaterThanOrEqual(base?.fills ?? Infinity);
    expect(other?.pumpRunS).toBeGreaterThan(base?.pumpRunS ?? Infinity);
  });

  it('ends when nobody wants it any more, and says how far it is until then', () => {
    const told: number[] = [];
    const goOn = (steps: number) => told.push(steps) < 3;
    expect(whatIf(reader, day, settings, { goOn })).toBeUndefined();
    expect(told).toEqual([1, 201, 401]);
  });

  it('leaves out steps whose settings are gone and says so', () => {
    const report = whatIf({ ...reader, settings: () => null }, day, settings);
    expect(report).toMatchObject({ differences: 0, settingsThen: null });
    expect(report?.remarks).toEqual([
      'Some steps are left out: their site or settings are no longer in the log.',
    ]);
  });

  it('says that the settings were changed on the day', () => {
    let asked = 0;
    const records = function* () {
      for (const record of reader.records(day)) yield { ...record, settingsRevision: ++asked > 100 ? 2 : 1 };
    };
    const report = whatIf({ ...reader, records, settings: () => ({ ...settings }) }, day, settings);
    expect(report?.remarks).toContain('The settings were changed on that day; the last of them are named.');
  });

  it('says what is missing of the day', () => {
    expect(whatIf(reader, day, settings)?.remarks).toEqual(['Nothing was logged from 11:00:00 to 11:30:00.']);
  });

  it('takes the answers to what another engine decided for no fault of either side', () => {
    const fromMs = hour(9);
    // Of ten minutes: the engine of then let the pump stand; flow and device told so a step later.
    const records = function* () {
      for (const record of reader.records(day)) yield stood(record, fromMs, fromMs + 600_000);
    };
    const report = whatIf({ ...reader, records, engineVersion: () => '0.0.1-old' }, day, settings);
    expect(report).toMatchObject({ differences: 0, base: whatIf(reader, day, settings)?.base });
    expect(report?.remarks.join()).toContain('Engine 0.0.1-old decided then');
  });

  it('says so when no engine of ours decided then', () => {
    const report = whatIf({ ...reader, engineVersion: () => importedEngine }, day, settings);
    expect(report?.remarks).toContain('The loop was driven by another controller, by rules of its own.');
  });

  it('refuses a day that is not kept', () => {
    expect(() => whatIf(reader, '2031-06-01', settings)).toThrow(RangeError);
  });
});

function stood(record: LogRecord, fromMs: number, toMs: number): LogRecord {
  const { input, outcome } = record;
  if (input.nowMs < fromMs || input.nowMs > toMs) return record;
  const outputs = { ...outcome.outputs, pumpFraction: 0 };
  const followed = input.nowMs > fromMs && input.feedback !== null;
  const feedback = followed ? { ...input.feedback, pumpFraction: 0 } : input.feedback;
  const readings = followed ? { ...input.readings, flowLMin: { value: 0, ageMs: 0 } } : input.readings;
  return {
    ...record,
    input: { ...input, readings, feedback } as LogRecord['input'],
    outcome: { ...outcome, phase: 'resting', outputs },
  };
}

const { input: logged } = logRecord(1);
const decided = (outputs: Partial<Decision['outputs']> = {}, phase: Decision['phase'] = 'resting') => {
  const decision = fakeDecision(logged, 0, { phase });
  return {
    ...decision,
    outputs: { pumpFraction: 0, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false, ...outputs },
  };
};

describe('what a side is given that drives the loop otherwise', () => {
  const input: EngineInput = {
    ...logged,
    readings: {
      panOutletC: { value: 30, ageMs: 0 },
      flowLMin: { value: 13, ageMs: 0 },
      pumpPowerW: { value: 40, ageMs: 0 },
      panLevelMm: { value: 40, ageMs: 0 },
      storeLevelMm: { value: 800, ageMs: 0 },
      reservoirLevelMm: { value: 300, ageMs: 0 },
    },
    feedback: { pumpFraction: 1, drainOpen: false, ageMs: 0 },
  };

  it('is all of it at the first step, and while both ask for the same', () => {
    expect(openLoopInput(input, undefined, undefined)).toBe(input);
    expect(openLoopInput(input, decided(), decided())).toBe(input);
  });

  it.each([
    { pumpFraction: 0.5 },
    { drainOpen: true },
    { drainPumpOn: true },
    { exchangerPumpOn: true },
    { heatDumpOn: true },
  ])('lacks what answers to outputs once these differ: %o', (other) => {
    const given = openLoopInput(input, decided(), decided(other));
    expect(Object.keys(given.readings)).toEqual(['panOutletC']);
    expect(given.feedback).toBeNull();
    expect(Object.keys(input.readings).length).toBe(6);
  });
});

describe('the count of decisions', () => {
  it('takes starts, fills and the time from each decision to the next', () => {
    const counter = createDecisionCounter();
    const on = { pumpFraction: 0.4 };
    counter.add(decided(), null);
    counter.add(decided(on, 'filling'), 10_000);
    counter.add(decided(on, 'filling'), 10_000);
    counter.add(decided(on, 'circulating'), 20_000);
    counter.add(decided(), 5000);
    counter.add(decided(on, 'circulating'), 7000);
    counter.add(decided(on, 'filling'), null);
    expect(counter.count()).toEqual({ starts: 2, fills: 2, pumpRunS: 35 });
  });

  it('does not count what ran before the first decision', () => {
    const counter = createDecisionCounter();
    counter.add(decided({ pumpFraction: 1 }, 'filling'), 9000);
    expect(counter.count()).toEqual({ starts: 0, fills: 0, pumpRunS: 0 });
  });
});

describe('remarks on settings that are not in force yet', () => {
  it('tell what is new from what is so already', () => {
    const loop = { site, settings, learnt: {} };
    const scalds = remarksOn(loop, { ...settings, storeLimitC: 75 }).find(({ text }) => text.includes('75'));
    expect(scalds?.isNew).toBe(true);
    const before = remarksOn(loop, settings);
    expect(before.length).toBeGreaterThan(0);
    expect(before.every(({ isNew }) => !isNew)).toBe(true);
  });
});
