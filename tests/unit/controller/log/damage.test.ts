import { mkdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openLogWriter } from '../../../../controller/log/writer.ts';
import { defaultSettings } from '../../../../shared-types/settings.ts';
import { logRecord, logRecords } from '../../../support/log-records.ts';
import { startProgram } from '../../../support/process.ts';
import { temporaryFolder } from '../../../support/temporary.ts';
import { read, withLog, writeLog } from './log-rig.ts';

/** Gives a writer everything that it takes; none of it may throw. */
function useAll(path: string) {
  const writer = openLogWriter(path);
  writer.batch(() => {
    const run = writer.startRun('engine 1', 0);
    writer.append(logRecord(1, { run }));
  });
  writer.keepSettings(defaultSettings, 0);
  writer.event({ atMs: 0, kind: 'link-back', text: '', values: {} });
  writer.saveState({ atMs: 0, run: 1, step: 1, engineVersion: '', state: {} });
  const found = { writable: writer.writable, remark: writer.remark, resume: writer.resume() };
  writer.close();
  return found;
}

describe('a log that cannot be used', () => {
  const files: [string, (path: string) => void, RegExp][] = [
    ['no database', (path) => writeFileSync(path, 'once upon a time'.repeat(400)), /damaged/],
    ['cut short', (path) => spoiled(path, () => truncateSync(path, 20_000)), /damaged/],
    ['overwritten', (path) => spoiled(path, overwrite), /damaged/],
    [
      'another database',
      (path) => new DatabaseSync(path).exec('CREATE TABLE t (a)'),
      /no log of this program/,
    ],
    ['of a newer version', (path) => spoiled(path, makeNewer), /newer version/],
    ['a folder', (path) => mkdirSync(path), /cannot be opened/],
  ];
  it.each(files)('%s: says so, stays as it is, and stops nobody', (_, spoil, remark) =>
    withLog((path) => {
      mkdirSync(dirname(path));
      spoil(path);
      const before = bytesOf(path);
      const found = useAll(path);
      expect(found.writable).toBe(false);
      expect(found.remark).toMatch(remark);
      expect(bytesOf(path)).toEqual(before);
      const remarks = read(path, (log) => {
        log.days();
        return [...log.records('2031-06-21'), ...log.remarks];
      });
      expect(remarks.length).toBeGreaterThan(0);
    }),
  );

  it('gives what is readable of it', () =>
    withLog((path) => {
      writeLog(path, logRecords(1, 2000));
      overwrite(path);
      read(path, (log) => {
        expect(log.days()).toMatchObject([{ day: '2031-06-21', steps: 2000 }]);
        const readable = [...log.records('2031-06-21')];
        expect(readable.length).toBeGreaterThan(100);
        expect(readable).toEqual(logRecords(1, readable.length));
        expect(readable.length).toBeLessThan(2000);
        expect(log.remarks.join()).toMatch(/damaged/);
      });
    }));

  it('is continued from all the same, as far as its state and settings can be read', () =>
    withLog((path) => {
      const settings = { ...defaultSettings, startDifferenceK: 9, fillDifferenceK: 9 };
      const writer = openLogWriter(path);
      const run = writer.startRun('engine 1', 0);
      writer.keepSettings(settings, 0);
      const saved = { atMs: 0, run, step: 1999, engineVersion: 'engine 1', state: { heat: 7 } };
      writer.batch(() => logRecords(1, 1999).forEach(writer.append));
      writer.saveState(saved);
      writer.append(logRecord(2000));
      writer.close();
      spoilPage(path, 0.6);
      const { writable, resume } = useAll(path);
      expect(writable).toBe(false);
      expect(resume).toEqual({ saved, after: [logRecord(2000)], settings });
    }));

  it('is one that does not exist, for a reader', () =>
    withLog((path) => {
      read(path, (log) => {
        expect(log.days()).toEqual([]);
        expect(log.newestMs()).toBeNull();
        expect(() => log.day('2031-06-21')).toThrow(RangeError);
        expect(log.remarks).toEqual(['there is no log yet']);
      });
    }));

  it('is one that another writer holds, until the next start', () =>
    withLog((path) => {
      const holder = openLogWriter(path);
      holder.append(logRecord(1));
      const { writable, remark } = useAll(path);
      expect(writable).toBe(false);
      expect(remark).toMatch(/another program holds the log/);
      holder.append(logRecord(2));
      holder.close();
      writeLog(path, [logRecord(3)]);
      expect(read(path, (log) => [...log.records('2031-06-21')])).toEqual(logRecords(1, 3));
    }));

  it('is tried again after a trouble that passes', () =>
    withLog((path) => {
      const writer = openLogWriter(path, { retryAfterMs: 0 });
      writer.append(logRecord(1));
      const other = new DatabaseSync(path);
      other.exec('BEGIN IMMEDIATE');
      writer.append(logRecord(2));
      expect([writer.writable, writer.remark]).toEqual([
        false,
        expect.stringMatching(/another program holds/),
      ]);
      other.exec('ROLLBACK');
      other.close();
      writer.append(logRecord(3));
      expect([writer.writable, writer.remark]).toEqual([true, null]);
      writer.close();
      expect(read(path, (log) => [...log.records('2031-06-21')])).toEqual([logRecord(1), logRecord(3)]);
    }));
});

describe('a process that writes a log', () => {
  const filler = 'tests/support/log-filler.ts';

  it('says so when it is given no more room', async () => {
    const folder = temporaryFolder('full');
    onTestFinished(folder.remove);
    // The system refuses a file of more than 600 blocks, as a full disk would.
    const script = `trap '' XFSZ; ulimit -f 600; exec "$0" "$@"`;
    const program = startProgram('bash', ['-c', script, process.execPath, filler, folder.file('log.sqlite')]);
    await program.line(/the disk (is full|does not answer)/);
    expect(await program.ended).toEqual({ code: 0, signal: null });
    const kept = read(folder.file('log.sqlite'), (log) => [...log.records('2031-06-21')]);
    expect(kept.map(({ step }) => step)).toEqual(printedSteps(program.output()));
  });

  it('loses no step that it kept when it is killed, and has none twice', async () => {
    const folder = temporaryFolder('killed');
    onTestFinished(folder.remove);
    const path = folder.file('log.sqlite');
    const printed: number[][] = [];
    for (const after of [3, 170, 55]) {
      const program = startProgram(process.execPath, [filler, path]);
      await program.line(new RegExp(`^${after}$`));
      await program.stop('SIGKILL');
      printed.push(printedSteps(program.output()));
    }
    read(path, (log) => {
      printed.forEach((steps, index) => {
        const kept = [...log.between(index + 1, 0, Number.MAX_SAFE_INTEGER)].map(({ step }) => step);
        expect(kept.slice(0, steps.length)).toEqual(steps);
        expect(kept).toEqual(Array.from(kept, (_, position) => position + 1));
      });
      expect(log.days()[0]?.steps).toBe([...log.records('2031-06-21')].length);
      expect(log.remarks).toEqual([]);
    });
  });
});

function spoiled(path: string, spoil: (path: string) => void): void {
  writeLog(path, logRecords(1, 2000));
  spoil(path);
}

const printedSteps = (output: string) => output.split('\n').slice(0, -1).map(Number).filter(Number.isInteger);

function bytesOf(path: string): Buffer | string {
  try {
    return readFileSync(path);
  } catch {
    return 'a folder';
  }
}

/** Spoils the second half of a log, where its later steps lie. */
function overwrite(path: string): void {
  const bytes = readFileSync(path);
  bytes.fill(0xa5, Math.floor(bytes.length / 2 / 4096) * 4096);
  writeFileSync(path, bytes);
}

/** Spoils one page, this far through the file. */
function spoilPage(path: string, share: number): void {
  const bytes = readFileSync(path);
  const from = Math.floor((bytes.length * share) / 4096) * 4096;
  writeFileSync(path, bytes.fill(0xa5, from, from + 4096));
}

function makeNewer(path: string): void {
  const database = new DatabaseSync(path);
  database.exec('PRAGMA user_version = 99');
  database.close();
}
