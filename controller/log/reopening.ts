import { type LogFile, openLogFile } from './file.ts';
import { type Trouble, troubleOf } from './trouble.ts';

/** A log file that is left when there is trouble, and opened again once the trouble may have passed. */
export interface ReopeningFile {
  /** Undefined while the file is left. */
  readonly current: LogFile | undefined;
  readonly remark: string | null;
  /** The file, opened again if it was left and its time has come. */
  use(): LogFile | undefined;
  /** Opens the file afresh; what was not committed goes. */
  reopen(): void;
  /** @param forGood - Never to be opened again, whatever the trouble. */
  leave(thrown: unknown, forGood?: boolean): void;
  close(): void;
}

/**
 * A file that cannot be opened at the first attempt is left for good: nothing is known of what it holds.
 *
 * @param retryAfterMs - Wall time before a trouble that may pass is tried again [ms].
 * @param onOpened - What has to be done with each opened file before it serves; when it throws, the file is left.
 */
export function openReopening(
  path: string,
  retryAfterMs: number,
  onOpened: (file: LogFile) => void,
): ReopeningFile {
  let file: LogFile | undefined;
  let trouble: Trouble | null = null;
  let retryAtMs = Number.POSITIVE_INFINITY;

  function leave(thrown: unknown, forGood = false): void {
    trouble = troubleOf(thrown);
    retryAtMs = trouble.passing && !forGood ? performance.now() + retryAfterMs : Number.POSITIVE_INFINITY;
    shut();
  }

  function shut(): void {
    closeQuietly(file);
    file = undefined;
  }

  function open(forGood: boolean): void {
    try {
      file = openLogFile(path);
      onOpened(file);
      trouble = null;
    } catch (thrown) {
      leave(thrown, forGood);
    }
  }

  open(true);
  return {
    get current() {
      return file;
    },
    get remark() {
      return trouble?.text ?? null;
    },
    use() {
      if (file === undefined && performance.now() >= retryAtMs) open(false);
      return file;
    },
    reopen() {
      shut();
      open(false);
    },
    leave,
    close() {
      retryAtMs = Number.POSITIVE_INFINITY;
      shut();
    },
  };
}

/** Closing rolls back what is open. */
function closeQuietly(file: LogFile | undefined): void {
  try {
    file?.close();
  } catch {
    // The trouble that led here says more.
  }
}
