import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { openLogWriter } from '../../../../controller/log/writer.ts';
import type { LogRecord } from '../../../../shared-types/log.ts';
import { defaultSettings, type Settings } from '../../../../shared-types/settings.ts';
import { logRecord, logRecords, noonMs } from '../../../support/log-records.ts';
import { read, withLog, writeLog } from './log-rig.ts';

const everything: LogRecord = logRecord(1, {
  siteRevision: 3,
  settingsRevision: 7,
  input: {
    elapsedMs: 9_999,
    readings: {
      panOutletC: { value: 0.1 + 0.2, ageMs: 0 },
      panSheetC: { value: null, ageMs: 70, fault: 'open-circuit' },
      ambientC: { value: -12.25, ageMs: 3, fault: 'unreadable' },
      flowLMin: { value: null, ageMs: 1e9 },
      pumpPowerW: { value: Number.MAX_VALUE, ageMs: 0.5 },
    },
    feedback: { pumpFraction: 0.37, drainOpen: null, ageMs: 12 },
    request: {
      id: 'request-0001',
      ageMs: -3,
      lifeMs: 5000,
      operation: { kind: 'shelve', alarm: 'store-hot', minutes: 7.5 },
    },
  },
  outcome: {
    outputs: { pumpFraction: 0.37, drainOpen: true, drainPumpOn: true, exchangerPumpOn: true },
    alarms: ['store-hot', 'frost-danger'],
    failed: ['panSheetC', 'flowLMin'],
    total: { heatHomeJ: 1 / 3, heatLostJ: 2e9, electricityJ: 0.1, pumpRunS: 5, starts: 6, fills: 7 },
  },
});

describe('a log', () => {
  it('gives back a record as it was, to the last bit', () =>
    withLog((path) => {
      const bare = logRecord(2, { input: { readings: {}, feedback: null } });
      writeLog(path, [everything, bare]);
      expect(read(path, (log) => [...log.records('2031-06-21')])).toStrictEqual([everything, bare]);
    }));

  it('is read while it is written', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      writer.append(logRecord(1));
      read(path, (log) => {
        expect(log.newestMs()).toBe(noonMs + 10_000);
        writer.append(logRecord(2));
        expect([...log.records('2031-06-21')]).toHaveLength(2);
      });
      writer.close();
    }));

  it('begins a new run at each start and finds the steps of each', () =>
    withLog((path) => {
      writeLog(path, logRecords(1, 5));
      const writer = openLogWriter(path);
      expect(writer.startRun('engine 2', 9)).toBe(2);
      writer.append(logRecord(1, { run: 2, input: { nowMs: noonMs + 90_000 } }));
      writer.close();
      read(path, (log) => {
        expect([...log.between(1, 2, 5)].map(({ step }) => step)).toEqual([3, 4]);
        expect([...log.between(2, 0, 9)].map(({ run, step }) => [run, step])).toEqual([[2, 1]]);
        expect([log.engineVersion(1), log.engineVersion(2), log.engineVersion(3)]).toEqual([
          'engine 1',
          'engine 2',
          null,
        ]);
      });
    }));

  it('keeps settings under a new revision only when they are new', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      const changed = { ...defaultSettings, startDifferenceK: 9 };
      expect(writer.keepSettings(defaultSettings, 1)).toBe(1);
      expect(writer.keepSettings({ ...defaultSettings }, 2)).toBe(1);
      expect(writer.keepSettings(changed, 3)).toBe(2);
      expect(writer.settings(1)).toEqual(defaultSettings);
      expect(writer.resume().settings).toEqual(changed);
      writer.close();
      read(path, (log) =>
        expect([log.settings(2), log.settings(3), log.site(1)]).toEqual([changed, null, null]),
      );
    }));

  it('keeps what its owner set when a new version brings a setting, and gives up settings that it does not understand', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      const { batchRunning: _, ...older } = { ...defaultSettings, startDifferenceK: 9 };
      writer.keepSettings(older as Settings, 1);
      writer.keepSettings({ ...defaultSettings, ofAnother: 1 } as Settings, 2);
      writer.close();
      read(path, (log) => {
        expect(log.settings(1)).toEqual({ ...defaultSettings, startDifferenceK: 9 });
        expect(log.settings(2)).toBeNull();
      });
    }));

  it('takes a batch wholly or, when its maker fails, not at all', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      writer.batch(() => logRecords(1, 3).forEach(writer.append));
      const fails = () =>
        writer.batch(() => {
          writer.append(logRecord(4));
          throw new Error('on purpose');
        });
      expect(fails).toThrow('on purpose');
      writer.append(logRecord(5));
      writer.close();
      read(path, (log) => {
        expect([...log.records('2031-06-21')].map(({ step }) => step)).toEqual([1, 2, 3, 5]);
        expect(log.days()[0]).toMatchObject({ steps: 4, heatHomeJ: 4000 });
      });
    }));

  it('adds the columns of a channel that it did not know', () =>
    withLog((path) => {
      writeLog(path, [logRecord(1)]);
      const database = new DatabaseSync(path);
      database.exec('ALTER TABLE steps DROP COLUMN windMs; ALTER TABLE steps DROP COLUMN windMs_age_ms');
      database.close();
      expect(read(path, (log) => [...log.records('2031-06-21')])).toEqual([logRecord(1)]);
      const windy = logRecord(2, { input: { readings: { windMs: { value: 3, ageMs: 1 } } } });
      writeLog(path, [windy]);
      expect(read(path, (log) => [...log.records('2031-06-21')])).toEqual([logRecord(1), windy]);
    }));

  it('reads a log from before there were heat dumps as without one, and goes on in it', () =>
    withLog((path) => {
      writeLog(path, [logRecord(1)]);
      const database = new DatabaseSync(path);
      database.exec('ALTER TABLE steps DROP COLUMN heat_dump');
      database.close();
      const plain = logRecord(1);
      expect(read(path, (log) => [...log.records('2031-06-21')])).toEqual([plain]);
      expect(plain.outcome.outputs).not.toHaveProperty('heatDumpOn');
      const outputs = { ...plain.outcome.outputs, heatDumpOn: true };
      const dumping = logRecord(2, { outcome: { ...plain.outcome, outputs } });
      writeLog(path, [dumping]);
      expect(read(path, (log) => [...log.records('2031-06-21')])).toEqual([plain, dumping]);
    }));
});

describe('saved states', () => {
  const save = (writer: ReturnType<typeof openLogWriter>, step: number) =>
    writer.saveState({ atMs: step, run: 1, step, engineVersion: 'engine 1', state: { at: step } });

  it('come back with the steps after them', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      writer.startRun('engine 1', 0);
      save(writer, 0);
      for (const record of logRecords(1, 7)) {
        writer.append(record);
        if (record.step === 4) save(writer, 4);
      }
      writer.close();
      const again = openLogWriter(path);
      const { saved, after } = again.resume();
      expect(saved).toEqual({ atMs: 4, run: 1, step: 4, engineVersion: 'engine 1', state: { at: 4 } });
      expect(after).toEqual(logRecords(5, 7));
      again.close();
    }));

  it('stay of each day the first and the newest', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      writer.startRun('engine 1', 0);
      save(writer, 0);
      for (let step = 1; step <= 20; step++) {
        writer.append(logRecord(step, { input: { localDay: step <= 12 ? '2031-06-21' : '2031-06-22' } }));
        if (step % 2 === 0) save(writer, step);
      }
      writer.close();
      const kept = read(path, (log) =>
        Array.from({ length: 21 }, (_, step) => log.stateBefore(1, step)?.step),
      );
      expect([...new Set(kept)]).toEqual([0, 2, 12, 14, 20]);
      expect(read(path, (log) => log.stateBefore(2, 5))).toBeNull();
    }));
});
