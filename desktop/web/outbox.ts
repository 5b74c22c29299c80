import type { MonitorEvent, MonitorWire } from '../../shared-types/monitor-api.ts';

/** What an outbox needs of a socket. */
export interface Sink {
  readonly bufferedAmount: number;
  send(text: string, sent: () => void): void;
}

/**
 * What waits to be sent to one client. Replies go at once. Events wait while the client is slow, and of
 * each site only the newest waits: a slow client sees fewer of them, never stale ones.
 */
export interface Outbox {
  /** @param sent - Called once the reply has left. */
  reply(wire: MonitorWire, sent: () => void): void;
  event(event: MonitorEvent): void;
}

/** What a newer event takes the place of. A site that is gone is news of that site. */
function keyOf(event: MonitorEvent): string {
  if (event.kind === 'host') return 'host';
  return `site ${event.kind === 'live' ? event.live.name : event.site}`;
}

/** Bytes on their way to a client above which it counts as slow. */
export const slowBytes = 1_048_576;

export function createOutbox(sink: Sink): Outbox {
  const waiting = new Map<string, MonitorEvent>();

  function flush(): void {
    for (const [key, event] of waiting) {
      if (sink.bufferedAmount > slowBytes) return;
      waiting.delete(key);
      sink.send(JSON.stringify({ event } satisfies MonitorWire), flush);
    }
  }

  return {
    reply(wire, sent) {
      sink.send(JSON.stringify(wire), () => {
        sent();
        flush();
      });
    },
    event(event) {
      waiting.set(keyOf(event), event);
      flush();
    },
  };
}
