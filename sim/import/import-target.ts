import { existsSync } from 'node:fs';
import { type ImportLog, openImportLog } from '../../controller/log/import-log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import { troubleOf } from '../../controller/log/trouble.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import { ImportRefused } from './import-refused.ts';

/** The log of imported days, as far as an import needs it. */
export interface ImportTarget {
  /** Null: nothing is to be kept. */
  readonly log: ImportLog | null;
  readonly storedOf: (day: string) => readonly LogRecord[];
  /** Makes all that was put in count. */
  commit(): void;
  /** Drops what was not committed. */
  close(): void;
}

/** @param write - False: only what the log holds is asked for. @throws ImportRefused when it cannot be written. */
export function openTarget(path: string, write: boolean): ImportTarget {
  if (write) return writtenTarget(path);
  if (!existsSync(path)) return emptyTarget;
  const reader = openLogReader(path);
  return { ...emptyTarget, storedOf: (day) => [...reader.records(day)], close: reader.close };
}

const emptyTarget: ImportTarget = {
  log: null,
  storedOf: () => [],
  commit: () => undefined,
  close: () => undefined,
};

function writtenTarget(path: string): ImportTarget {
  try {
    const log = openImportLog(path);
    return { log, storedOf: log.records, commit: log.commit, close: log.close };
  } catch (thrown) {
    throw new ImportRefused(`the log of imported days cannot be written: ${troubleOf(thrown).text}`);
  }
}
