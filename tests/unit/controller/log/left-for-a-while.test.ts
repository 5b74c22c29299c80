import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { openLogWriter } from '../../../../controller/log/writer.ts';
import { defaultSettings } from '../../../../shared-types/settings.ts';
import { logRecord } from '../../../support/log-records.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';
import { read, withLog, writeLog } from './log-rig.ts';

const changed = { ...defaultSettings, startDifferenceK: 9, fillDifferenceK: 9 };
const older = { ...defaultSettings, startDifferenceK: 2 };
const at = { retryAfterMs: 0 };

/** Does something while another program writes into the log for longer than a writer waits. */
function whileHeld(path: string, work: () => void): void {
  const other = new DatabaseSync(path);
  other.exec('BEGIN IMMEDIATE');
  work();
  other.exec('ROLLBACK');
  other.close();
}

const stepsOf = (path: string) =>
  read(path, (log) =>
    [...log.records('2031-06-21')].map(({ run, step, settingsRevision: revision }) => [
      run,
      step,
      log.settings(revision)?.startDifferenceK,
    ]),
  );

describe('a log that could not be written for a while', () => {
  it('holds the settings of then before any step under them', () =>
    withLog((path) => {
      const writer = openLogWriter(path, at);
      writer.startRun('engine 1', 0);
      writer.append(logRecord(1, { settingsRevision: writer.keepSettings(older, 0) }));
      let settingsRevision = 0;
      whileHeld(path, () => {
        settingsRevision = writer.keepSettings(changed, 0);
      });
      expect(writer.writable).toBe(false);
      writer.append(logRecord(2, { settingsRevision }));
      expect([writer.writable, writer.remark]).toEqual([true, null]);
      expect(writer.resume().settings).toEqual(changed);
      writer.close();
      expect(stepsOf(path)).toEqual([
        [1, 1, 2],
        [1, 2, 9],
      ]);
    }));

  it('holds the site of then, and counts its days by the zone of that', () =>
    withLog((path) => {
      const writer = openLogWriter(path, at);
      writer.keepSite(siteOf(demoContent({ timeZone: 'Etc/UTC' })), 0);
      // In 2031 summer time begins there on 30 March: a day of 23 hours.
      const site = siteOf(demoContent({ timeZone: 'Europe/Lisbon' }));
      let siteRevision = 0;
      whileHeld(path, () => {
        siteRevision = writer.keepSite(site, 0);
      });
      const input = { localDay: '2031-03-30', elapsedMs: 46_000 };
      writer.append(logRecord(1, { siteRevision, input }));
      writer.close();
      read(path, (log) => {
        expect([log.site(siteRevision), siteRevision]).toEqual([site, 2]);
        expect(log.days()[0]?.coveredFraction).toBe(46_000 / (23 * 3_600_000));
      });
    }));

  it('gets the run whose beginning failed, apart from those before', () =>
    withLog((path) => {
      writeLog(path, [logRecord(1), logRecord(2)]);
      const writer = openLogWriter(path, at);
      const numbers = { run: 0, settingsRevision: 0 };
      whileHeld(path, () =>
        writer.batch(() => {
          numbers.run = writer.startRun('engine 2', 5);
          numbers.settingsRevision = writer.keepSettings(changed, 5);
        }),
      );
      expect([numbers.run, writer.writable]).toEqual([2, false]);
      writer.append(logRecord(1, numbers));
      writer.append(logRecord(2, numbers));
      writer.close();
      expect(stepsOf(path).slice(2)).toEqual([
        [2, 1, 9],
        [2, 2, 9],
      ]);
      expect(read(path, (log) => [log.engineVersion(2), log.facts().runs])).toEqual(['engine 2', 2]);
    }));

  type Writer = ReturnType<typeof openLogWriter>;
  const takings: [string, (writer: Writer, by: 'it' | 'another') => number][] = [
    ['run', (writer, by) => writer.startRun(`engine of ${by}`, 5)],
    ['settings', (writer, by) => writer.keepSettings(by === 'it' ? changed : older, 5)],
  ];
  it.each(takings)('is left for good when another controller took the number of its %s', (_, take) =>
    withLog((path) => {
      const writer = openLogWriter(path, at);
      const numbers = { it: 0, another: 0 };
      whileHeld(path, () => {
        numbers.it = take(writer, 'it');
      });
      const another = openLogWriter(path);
      numbers.another = take(another, 'another');
      another.close();
      expect(numbers.it).toBe(numbers.another);
      writer.append(logRecord(1));
      writer.append(logRecord(2));
      expect([writer.writable, writer.remark]).toEqual([
        false,
        'another program went on in the log while it could not be written',
      ]);
      writer.close();
      expect(stepsOf(path)).toEqual([]);
    }),
  );
});
