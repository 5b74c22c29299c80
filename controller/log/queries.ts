import type { DatabaseSync } from 'node:sqlite';
import { defaultSettings, type Settings, settingsSchema } from '../../shared-types/settings.ts';
import { type Site, siteSchema } from '../../shared-types/site.ts';
import { applicationId, layoutVersion, runOfKey, stepOfKey } from './layout.ts';
import type { SavedState } from './log.ts';
import { LogTrouble } from './trouble.ts';

/** Questions that writer and reader both ask. */

/** @returns false for an empty file. @throws LogTrouble when the file is something else, or newer. */
export function isOurLog(database: DatabaseSync): boolean {
  const number = (pragma: string) => Number(database.prepare(`PRAGMA ${pragma}`).get()?.[pragma] ?? 0);
  if (number('page_count') === 0) return false;
  if (number('application_id') !== applicationId)
    throw new LogTrouble('the file is a database, but no log of this program');
  const version = number('user_version');
  if (version > layoutVersion)
    throw new LogTrouble(`the log was written by a newer version of this program (layout ${version})`);
  return true;
}

/** Columns of the table of steps; an older log may lack some channel's. */
export function columnsOf(database: DatabaseSync): ReadonlySet<string> {
  const rows = database.prepare('PRAGMA table_info(steps)').all();
  return new Set(rows.map((row) => String(row['name'])));
}

/** Newest saved state whose key lies in [from, to], or null. */
export function stateWithin(database: DatabaseSync, from: number, to: number): SavedState | null {
  const row = database
    .prepare('SELECT * FROM states WHERE id BETWEEN ? AND ? ORDER BY id DESC LIMIT 1')
    .get(from, to);
  if (row === undefined) return null;
  const key = Number(row['id']);
  return {
    atMs: Number(row['at_ms']),
    run: runOfKey(key),
    step: stepOfKey(key),
    engineVersion: String(row['engine_version']),
    state: JSON.parse(String(row['json'])),
  };
}

/** A site as it was kept, or null when it is missing or of a form that is no longer understood. */
export function siteOf(database: DatabaseSync, revision: number): Site | null {
  return siteSchema.safeParse(jsonOf(database, 'sites', revision)).data ?? null;
}

/**
 * Settings as they were kept, or null when they are missing or no longer understood. A setting that came later stands at
 * its default, by which the rules of then went on.
 */
export function settingsOf(database: DatabaseSync, revision: number): Settings | null {
  const kept = jsonOf(database, 'settings', revision);
  if (typeof kept !== 'object' || kept === null) return null;
  return settingsSchema.safeParse({ ...defaultSettings, ...kept }).data ?? null;
}

function jsonOf(database: DatabaseSync, table: 'sites' | 'settings', revision: number): unknown {
  const row = database.prepare(`SELECT json FROM ${table} WHERE revision = ?`).get(revision);
  return row === undefined ? null : JSON.parse(String(row['json']));
}

/** A site or settings as they stand in the log. */
export interface Revision {
  readonly revision: number;
  readonly keptMs: number;
  readonly json: string;
}

/** The newest revision, or null before the first. */
export function newestRevision(database: DatabaseSync, table: 'sites' | 'settings'): Revision | null {
  const row = database.prepare(`SELECT * FROM ${table} ORDER BY revision DESC LIMIT 1`).get();
  if (row === undefined) return null;
  return {
    revision: Number(row['revision']),
    keptMs: Number(row['kept_ms']),
    json: String(row['json']),
  };
}
