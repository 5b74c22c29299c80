import type { LogFile } from './file.ts';

/**
 * Writes wholly or not at all.
 *
 * What is remembered beside the file follows it only when all went well: on failure the file has to be left.
 *
 * @param durable - On the disk before this returns, not just handed to the system.
 * @throws what `work` or the database throws.
 */
export function transact({ database }: LogFile, durable: boolean, work: () => void): void {
  if (durable) database.exec('PRAGMA synchronous = FULL');
  database.exec('BEGIN IMMEDIATE');
  work();
  database.exec('COMMIT');
  if (durable) database.exec('PRAGMA synchronous = NORMAL');
}
