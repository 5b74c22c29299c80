import type { DatabaseSync } from 'node:sqlite';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { LogFile } from './file.ts';
import { importedEngine } from './layout.ts';
import { newestRevision, type Revision } from './queries.ts';
import { transact } from './transaction.ts';
import { LogTrouble } from './trouble.ts';

/**
 * What steps are logged under: their run, the site and the settings in force.
 *
 * Their numbers are given here, and so are known even while the file is left. A file that comes back is first
 * given what it lacks, so that no step ever stands in it under a number that means something else.
 */
export interface Footing {
  /** Learns the numbers from the first file, and lays what it holds into each later one. */
  onOpened(file: LogFile): void;
  /** Keeps all of it in a file, as far as it is not there. @throws what the database throws, and LogTrouble. */
  lay(file: LogFile): void;
  /** @returns the number of the run that begins. */
  beginRun(engineVersion: string, startedMs: number): number;
  /** Takes a site or settings if they are new. @returns their revision. */
  takeSite(site: Site, atMs: number): number;
  takeSettings(settings: Settings, atMs: number): number;
}

interface Run {
  readonly run: number;
  readonly startedMs: number;
  readonly engineVersion: string;
}

export function createFooting(): Footing {
  let isFirst = true;
  let newestRun = 0;
  let run: Run | null = null;
  let timeZone: string | null = null;
  const newest: { sites: Revision | null; settings: Revision | null } = { sites: null, settings: null };

  function take(table: 'sites' | 'settings', content: object, keptMs: number): number {
    const json = JSON.stringify(content);
    const before = newest[table];
    if (before?.json === json) return before.revision;
    const revision = (before?.revision ?? 0) + 1;
    newest[table] = { revision, keptMs, json };
    return revision;
  }

  function learn({ database }: LogFile): void {
    newestRun = Number(database.prepare('SELECT max(run) AS run FROM runs').get()?.['run'] ?? 0);
    newest.sites = newestRevision(database, 'sites');
    newest.settings = newestRevision(database, 'settings');
    isFirst = false;
  }

  function lay(file: LogFile): void {
    if (timeZone !== null) file.turnToZone(timeZone);
    if (run !== null) layRun(file.database, run);
    layRevision(file.database, 'sites', newest.sites);
    layRevision(file.database, 'settings', newest.settings);
  }

  return {
    onOpened(file) {
      if (isFirst) learn(file);
      else transact(file, true, () => lay(file));
    },
    lay,
    beginRun(engineVersion, startedMs) {
      newestRun += 1;
      run = { run: newestRun, startedMs, engineVersion };
      return newestRun;
    },
    takeSite(site, atMs) {
      timeZone = site.timeZone;
      return take('sites', site, atMs);
    },
    takeSettings: (settings, atMs) => take('settings', settings, atMs),
  };
}

function layRun(database: DatabaseSync, { run, startedMs, engineVersion }: Run): void {
  const there = database.prepare('SELECT started_ms, engine_version FROM runs WHERE run = ?').get(run);
  if (there?.['started_ms'] === startedMs && there['engine_version'] === engineVersion) return;
  if (there !== undefined) throw takenByAnother();
  if (database.prepare('SELECT 1 FROM runs WHERE engine_version = ?').get(importedEngine) !== undefined)
    throw new LogTrouble('the log holds days of another logger; a controller needs one of its own');
  database.prepare('INSERT INTO runs VALUES (?, ?, ?)').run(run, startedMs, engineVersion);
}

function layRevision(database: DatabaseSync, table: 'sites' | 'settings', wanted: Revision | null): void {
  if (wanted === null) return;
  const { revision, keptMs, json } = wanted;
  const there = database.prepare(`SELECT json FROM ${table} WHERE revision = ?`).get(revision);
  if (there?.['json'] === json) return;
  if (there !== undefined) throw takenByAnother();
  database.prepare(`INSERT INTO ${table} VALUES (?, ?, ?)`).run(revision, keptMs, json);
}

/** Steps that were logged now would stand under what another writer kept. */
const takenByAnother = () =>
  new LogTrouble('another program went on in the log while it could not be written');
