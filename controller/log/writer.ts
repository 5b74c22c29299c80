import type { LogEvent, LogRecord } from '../../shared-types/log.ts';
import type { LogFile } from './file.ts';
import { createFooting } from './footing.ts';
import { guardFile } from './guard.ts';
import { dayNumber, stepKey } from './layout.ts';
import type { LogWriter, SavedState } from './log.ts';
import { settingsOf, siteOf } from './queries.ts';
import { nothingToResume, resumeOf, resumeReadOnly } from './resume.ts';
import { rowOf } from './row.ts';

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
  const footing = createFooting();
  const file = guardFile(path, retryAfterMs, footing.onOpened);
  const layFooting = () => file.write(footing.lay, { durable: true });
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
      const run = footing.beginRun(engineVersion, atMs);
      layFooting();
      return run;
    },
    keepSite(site, atMs) {
      const revision = footing.takeSite(site, atMs);
      layFooting();
      return revision;
    },
    keepSettings(settings, atMs) {
      const revision = footing.takeSettings(settings, atMs);
      layFooting();
      return revision;
    },
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
