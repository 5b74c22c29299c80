import { setTimeout as pause } from 'node:timers/promises';

/** Something that was started and has to be stopped. */
interface Part {
  stop(): Promise<unknown>;
  /** Ends it at once, where it did not stop in time. */
  kill?(): void;
}

/** All that runs, so that one call stops it, whenever that call comes. */
export interface Parts {
  /** Starts a part, unless everything is being stopped: then it throws. */
  begin<P extends Part>(start: () => P): P;
  /** Stops all parts in the order of their start; what has not stopped by the deadline is ended. */
  stop(): Promise<void>;
}

/** @param deadlineMs - Wall time that all parts together have to stop [ms]. */
export function createParts(deadlineMs: number): Parts {
  const parts: Part[] = [];
  let stopping = false;

  async function stopAll(): Promise<void> {
    // One that fails to stop must not keep the others running.
    for (const part of parts) await part.stop().catch(() => part.kill?.());
  }

  return {
    begin(start) {
      if (stopping) throw new Error('everything is being stopped');
      const part = start();
      parts.push(part);
      return part;
    },
    async stop() {
      stopping = true;
      const inTime = new AbortController();
      await Promise.race([stopAll(), pause(deadlineMs, undefined, { signal: inTime.signal })]);
      inTime.abort();
      for (const part of parts) part.kill?.();
    },
  };
}
