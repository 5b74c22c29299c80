/** Sends at most once an interval for each key; the first at once, the newest never lost. */
export interface Coalescer<Key> {
  mark(key: Key): void;
  close(): void;
}

/**
 * @param intervalMs - Least time between two sends of one key [ms].
 * @param send - Called with the key; it looks up what is newest itself.
 */
export function createCoalescer<Key>(intervalMs: number, send: (key: Key) => void): Coalescer<Key> {
  const waiting = new Map<Key, { timer: NodeJS.Timeout; again: boolean }>();

  function open(key: Key): void {
    const timer = setTimeout(() => {
      const entry = waiting.get(key);
      waiting.delete(key);
      if (entry?.again === true) open(key);
    }, intervalMs);
    timer.unref();
    waiting.set(key, { timer, again: false });
    send(key);
  }

  return {
    mark(key) {
      const entry = waiting.get(key);
      if (entry === undefined) open(key);
      else entry.again = true;
    },
    close() {
      for (const { timer } of waiting.values()) clearTimeout(timer);
      waiting.clear();
    },
  };
}
