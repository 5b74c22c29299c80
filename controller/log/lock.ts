import { DatabaseSync } from 'node:sqlite';

/**
 * Keeps a second writer out of a log for as long as this one holds it, readers not concerned.
 *
 * The lock is that of a small database beside the log; the system lets go of it when the process ends,
 * however it ends.
 *
 * @throws an error of the database when another writer holds it.
 */
export function takeWriterLock(path: string): { release(): void } {
  const database = new DatabaseSync(`${path}.lock`);
  try {
    database.exec('BEGIN EXCLUSIVE');
  } catch (thrown) {
    database.close();
    throw thrown;
  }
  return { release: () => database.close() };
}
