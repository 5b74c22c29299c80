import { type LogFile, openLogFile } from './file.ts';
import { type Trouble, troubleOf } from './trouble.ts';

interface WriteOptions {
  /** On the disk before this returns, not just handed to the system. */
  readonly durable?: boolean;
  /** Later writing makes no sense without it: when it fails, the file is left for good. */
  readonly essential?: boolean;
}

/** The file of a writer, behind a guard that turns every failure into a remark. */
export interface GuardedFile {
  readonly writable: boolean;
  readonly remark: string | null;
  /** Does a piece of writing wholly or not at all. @returns undefined when it was not done. */
  write<Result>(work: (open: LogFile) => Result, options?: WriteOptions): Result | undefined;
  read<Result>(work: (open: LogFile) => Result, without: Result): Result;
  /** Joins all writing inside `work` into one transaction. @throws what `work` itself throws. */
  batch(work: () => void): void;
  close(): void;
}

/** @param retryAfterMs - Wall time before a trouble that may pass is tried again [ms]. */
export function guardFile(path: string, retryAfterMs: number): GuardedFile {
  let file: LogFile | undefined;
  let trouble: Trouble | null = null;
  let retryAtMs = Number.POSITIVE_INFINITY;
  let batching = false;

  function leave(thrown: unknown, forGood: boolean): void {
    trouble = troubleOf(thrown);
    retryAtMs = trouble.passing && !forGood ? performance.now() + retryAfterMs : Number.POSITIVE_INFINITY;
    closeQuietly(file);
    file = undefined;
  }

  function open(forGood: boolean): LogFile | undefined {
    try {
      file = openLogFile(path);
      trouble = null;
    } catch (thrown) {
      leave(thrown, forGood);
    }
    return file;
  }

  // Inside a batch nothing is opened anew: its beginning would be missing.
  const usable = () =>
    file === undefined && !batching && performance.now() >= retryAtMs ? open(false) : file;

  function write<Result>(work: (open: LogFile) => Result, options: WriteOptions = {}): Result | undefined {
    const into = usable();
    if (into === undefined) return undefined;
    try {
      return batching ? work(into) : transact(into, options.durable ?? false, () => work(into));
    } catch (thrown) {
      leave(thrown, options.essential ?? false);
      return undefined;
    }
  }

  function inBatch(sql: 'BEGIN IMMEDIATE' | 'COMMIT'): void {
    try {
      file?.database.exec(sql);
    } catch (thrown) {
      leave(thrown, false);
    }
  }

  function batch(work: () => void): void {
    if (batching || usable() === undefined) {
      work();
      return;
    }
    inBatch('BEGIN IMMEDIATE');
    batching = true;
    try {
      work();
      inBatch('COMMIT');
    } catch (thrown) {
      // The caller's own failure: the half that was written goes, and the file is opened afresh.
      closeQuietly(file);
      batching = false;
      open(false);
      throw thrown;
    } finally {
      batching = false;
    }
  }

  open(true);
  return {
    get writable() {
      return file !== undefined;
    },
    get remark() {
      return trouble?.text ?? null;
    },
    write,
    read(work, without) {
      if (file === undefined) return without;
      try {
        return work(file);
      } catch (thrown) {
        leave(thrown, true);
        return without;
      }
    },
    batch,
    close() {
      retryAtMs = Number.POSITIVE_INFINITY;
      closeQuietly(file);
      file = undefined;
    },
  };
}

/** What is remembered beside the file follows it only when all went well: on failure it is left. */
function transact<Result>({ database }: LogFile, durable: boolean, work: () => Result): Result {
  if (durable) database.exec('PRAGMA synchronous = FULL');
  database.exec('BEGIN IMMEDIATE');
  const result = work();
  database.exec('COMMIT');
  if (durable) database.exec('PRAGMA synchronous = NORMAL');
  return result;
}

/** Closing rolls back what is open. */
function closeQuietly(file: LogFile | undefined): void {
  try {
    file?.close();
  } catch {
    // The trouble that led here says more.
  }
}
