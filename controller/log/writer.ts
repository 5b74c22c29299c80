import type { LogEvent, LogRecord } from '../../shared-types/log.ts';
import type { LogFile } from './file.ts';
import { type GuardedFile, guardFile } from './guard.ts';
import { dayNumber, importedEngine, stepKey } from './layout.ts';
import type { LogWriter, SavedState } from './log.ts';
import { newestRevision, settingsOf, siteOf } from './queries.ts';
import { nothingToResume, resumeOf, resumeReadOnly } from './resume.ts';
import { rowOf } from './row.ts';
import { LogTrouble } from './trouble.ts';

export interface LogWriterOptions {
  /** How long the writer waits after a trouble that may pass before it tries again [ms, wall time]. */
  readonly retryAfterMs?: number;
}

/** Events that a power cut must not take away; the others may go with the last second. */
const durableEvents: ReadonlySet<LogEvent['kind']> = new Set([
  'controller-started',
  'controller-stopped',
  'alarm-raised',
  'alarm-returned',
  'alarm-acknowledged',
  'settings-changed',
]);

/** Opens or begins the log at `path`. Never throws: see `LogWriter`. */
export function openLogWriter(path: string, { retryAfterMs = 30_000 }: LogWriterOptions = {}): LogWriter {
  const file = guardFile(path, retryAfterMs);
  /** Day of the newest step of this run, to which a saved state belongs. */
  let newestDay: number | null = null;
  return {
    get writable() {
      return file.writable;
    },
    get remark() {
      return file.remark;
    },
    resume: () => (file.writable ? file.read(resumeOf, nothingToResume) : resumeReadOnly(path)),
    batch: file.batch,
    site: (revision) => file.read(({ database }) => siteOf(database, revision), null),
    settings: (revision) => file.read(({ database }) => settingsOf(database, revision), null),
    startRun(engineVersion, atMs) {
      newestDay = null;
      return begin(file, engineVersion, atMs);
    },
    keepSite(site, atMs) {
      file.write((open) => open.turnToZone(site.timeZone));
      return keepRevision(file, 'sites', site, atMs);
    },
    keepSettings: (settings, atMs) => keepRevision(file, 'settings', settings, atMs),
    append(record) {
      newestDay = dayNumber(record.input.localDay);
      file.write((open) => enterStep(open, record));
    },
    event(event) {
      file.write((open) => enterEvent(open, event), { durable: durableEvents.has(event.kind) });
    },
    saveState(saved) {
      file.write((open) => enterState(open, saved, newestDay), { durable: true });
    },
    close: file.close,
  };
}

/** A failed beginning leaves no number to write under: the file is then left for good. */
const numbering = { durable: true, essential: true } as const;

function begin(file: GuardedFile, engineVersion: string, atMs: number): number {
  const insert = 'INSERT INTO runs (started_ms, engine_version) VALUES (?, ?)';
  const run = file.write(({ database }) => {
    if (database.prepare('SELECT 1 FROM runs WHERE engine_version = ?').get(importedEngine) !== undefined)
      throw new LogTrouble('the log holds days of another logger; a controller needs one of its own');
    return Number(database.prepare(insert).run(atMs, engineVersion).lastInsertRowid);
  }, numbering);
  return run ?? 1;
}

function keepRevision(file: GuardedFile, table: 'sites' | 'settings', content: object, atMs: number): number {
  const json = JSON.stringify(content);
  const revision = file.write(({ database }) => {
    const newest = newestRevision(database, table);
    if (newest?.json === json) return newest.revision;
    const next = (newest?.revision ?? 0) + 1;
    database.prepare(`INSERT INTO ${table} VALUES (?, ?, ?)`).run(next, atMs, json);
    return next;
  }, numbering);
  return revision ?? 1;
}

function enterStep({ book, insertStep, words }: LogFile, record: LogRecord): void {
  insertStep.run(...rowOf(record, book.enter(record), words));
}

function enterEvent({ insertEvent }: LogFile, { atMs, kind, text, values }: LogEvent): void {
  insertEvent.run(atMs, kind, text, JSON.stringify(values));
}

/** Keeps a state; of the others of its run and day only the first stays. */
function enterState({ database }: LogFile, saved: SavedState, day: number | null): void {
  const key = stepKey(saved.run, saved.step);
  const run = [stepKey(saved.run, 0), key] as const;
  database
    .prepare(
      `DELETE FROM states WHERE id >= ?1 AND id < ?2 AND day IS ?3
       AND id > (SELECT min(id) FROM states WHERE id >= ?1 AND id < ?2 AND day IS ?3)`,
    )
    .run(...run, day);
  database
    .prepare('INSERT OR REPLACE INTO states (id, day, at_ms, engine_version, json) VALUES (?, ?, ?, ?, ?)')
    .run(key, day, saved.atMs, saved.engineVersion, JSON.stringify(saved.state));
}
