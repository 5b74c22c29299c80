import { DatabaseSync } from 'node:sqlite';
import { stepKey } from './layout.ts';
import type { Resume } from './log.ts';
import { isOurLog, newestRevision, settingsOf, stateWithin } from './queries.ts';
import { stepsBetween } from './steps.ts';
import { openWords, type Words } from './words.ts';

export const nothingToResume: Resume = { saved: null, after: [], settings: null };

interface Opened {
  readonly database: DatabaseSync;
  readonly words: Words;
}

/** @throws what the database throws. */
export function resumeOf(opened: Opened): Resume {
  return { ...stateOf(opened), settings: newestSettings(opened) };
}

/**
 * As much as can be read of a log that cannot be written. Never throws.
 *
 * Settings that a person chose must not fall back to others because a page elsewhere is damaged.
 */
export function resumeReadOnly(path: string): Resume {
  let database: DatabaseSync | undefined;
  try {
    database = new DatabaseSync(path, { readOnly: true });
    if (!isOurLog(database)) return nothingToResume;
    const opened = { database, words: openWords(database) };
    return {
      ...readable(() => stateOf(opened), { saved: null, after: [] }),
      settings: readable(() => newestSettings(opened), null),
    };
  } catch {
    // Why the log cannot be used stands in the writer's remark.
    return nothingToResume;
  } finally {
    database?.close();
  }
}

function readable<Part>(question: () => Part, without: Part): Part {
  try {
    return question();
  } catch {
    return without;
  }
}

function stateOf(opened: Opened): Pick<Resume, 'saved' | 'after'> {
  const saved = stateWithin(opened.database, 0, Number.MAX_SAFE_INTEGER);
  if (saved === null) return { saved, after: [] };
  const savedKey = stepKey(saved.run, saved.step);
  return { saved, after: [...stepsBetween(opened, savedKey, Number.MAX_SAFE_INTEGER)] };
}

function newestSettings({ database }: Opened): Resume['settings'] {
  const newest = newestRevision(database, 'settings');
  return newest === null ? null : settingsOf(database, newest.revision);
}
