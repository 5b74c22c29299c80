import type { LogFile } from './file.ts';
import { openReopening, type ReopeningFile } from './reopening.ts';
import { transact } from './transaction.ts';

interface WriteOptions {
  /** On the disk before this returns, not just handed to the system. */
  readonly durable?: boolean;
}

/** The file of a writer, behind a guard that turns every failure into a remark. */
export interface GuardedFile {
  readonly writable: boolean;
  readonly remark: string | null;
  /** Does a piece of writing wholly or, when the file is left, not at all. */
  write(work: (open: LogFile) => void, options?: WriteOptions): void;
  read<Result>(work: (open: LogFile) => Result, without: Result): Result;
  /** Joins all writing inside `work` into one transaction. @throws what `work` itself throws. */
  batch(work: () => void): void;
  close(): void;
}

/**
 * @param retryAfterMs - Wall time before a trouble that may pass is tried again [ms].
 * @param onOpened - What has to be done with each opened file before anything else is written.
 */
export function guardFile(
  path: string,
  retryAfterMs: number,
  onOpened: (file: LogFile) => void,
): GuardedFile {
  const file = openReopening(path, retryAfterMs, onOpened);
  const batcher = createBatcher(file);
  return {
    get writable() {
      return file.current !== undefined;
    },
    get remark() {
      return file.remark;
    },
    write(work, { durable = false } = {}) {
      // Inside a batch nothing is opened anew: its beginning would be missing.
      const into = batcher.batching ? file.current : file.use();
      if (into === undefined) return;
      try {
        if (batcher.batching) work(into);
        else transact(into, durable, () => work(into));
      } catch (thrown) {
        file.leave(thrown);
      }
    },
    read(work, without) {
      if (file.current === undefined) return without;
      try {
        return work(file.current);
      } catch (thrown) {
        file.leave(thrown, true);
        return without;
      }
    },
    batch: batcher.batch,
    close: file.close,
  };
}

interface Batcher {
  /** True while a batch is under way, whether or not its file is still there. */
  readonly batching: boolean;
  batch(work: () => void): void;
}

function createBatcher(file: ReopeningFile): Batcher {
  let batching = false;

  function execute(sql: 'BEGIN IMMEDIATE' | 'COMMIT'): void {
    try {
      file.current?.database.exec(sql);
    } catch (thrown) {
      file.leave(thrown);
    }
  }

  function runBatch(work: () => void): void {
    execute('BEGIN IMMEDIATE');
    try {
      work();
    } catch (thrown) {
      // The caller's own failure: the half that was written goes with the file that is left.
      file.reopen();
      throw thrown;
    }
    execute('COMMIT');
  }

  return {
    get batching() {
      return batching;
    },
    batch(work) {
      if (batching || file.use() === undefined) {
        work();
        return;
      }
      batching = true;
      try {
        runBatch(work);
      } finally {
        batching = false;
      }
    },
  };
}
