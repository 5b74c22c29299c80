import { logPath } from '../../../../controller/log/log.ts';
import { openLogReader } from '../../../../controller/log/reader.ts';
import { openLogWriter } from '../../../../controller/log/writer.ts';
import type { LogRecord } from '../../../../shared-types/log.ts';
import { temporaryFolder } from '../../../support/temporary.ts';

/** Runs a test on a log of its own below a temporary folder. */
export function withLog(test: (path: string) => void): void {
  const folder = temporaryFolder('log');
  try {
    test(logPath(folder.path, 'some-loop'));
  } finally {
    folder.remove();
  }
}

/** Begins a run and writes records into it, then closes. */
export function writeLog(path: string, records: readonly LogRecord[]): void {
  const writer = openLogWriter(path);
  writer.startRun('engine 1', records[0]?.input.nowMs ?? 0);
  for (const record of records) writer.append(record);
  writer.close();
}

/** Opens a reader for as long as the question takes. */
export function read<Answer>(
  path: string,
  question: (reader: ReturnType<typeof openLogReader>) => Answer,
): Answer {
  const reader = openLogReader(path);
  try {
    return question(reader);
  } finally {
    reader.close();
  }
}
