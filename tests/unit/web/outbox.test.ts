import { describe, expect, it } from 'vitest';
import { createOutbox, slowBytes } from '../../../desktop/web/outbox.ts';
import type { MonitorEvent, SiteLive } from '../../../shared-types/monitor-api.ts';

const live = (name: string, snapshotAgeMs: number): MonitorEvent => ({
  kind: 'live',
  live: {
    name,
    status: null,
    site: null,
    snapshot: null,
    snapshotAgeMs,
    clockAheadMs: null,
  } satisfies SiteLive,
});

/** A socket whose other end reads only when it is told to. */
function slowSink() {
  const sent: { event?: MonitorEvent; id?: number }[] = [];
  const callbacks: (() => void)[] = [];
  const sink = {
    bufferedAmount: 0,
    send(text: string, done: () => void) {
      sent.push(JSON.parse(text));
      callbacks.push(done);
    },
  };
  const drain = () => {
    sink.bufferedAmount = 0;
    for (const done of callbacks.splice(0)) done();
  };
  return { sink, sent, drain };
}

describe('createOutbox', () => {
  it('sends events at once to a client that keeps up', () => {
    const { sink, sent } = slowSink();
    const outbox = createOutbox(sink);
    outbox.event(live('a', 1));
    outbox.event(live('a', 2));
    expect(sent).toHaveLength(2);
  });

  it('keeps only the newest of each site for a slow client, and sends it once the client has caught up', () => {
    const { sink, sent, drain } = slowSink();
    const outbox = createOutbox(sink);
    outbox.event(live('a', 0));
    sink.bufferedAmount = slowBytes + 1;
    for (let age = 1; age <= 100; age++) for (const name of ['a', 'b']) outbox.event(live(name, age));
    expect(sent).toHaveLength(1);
    drain();
    expect(sent.slice(1)).toEqual([{ event: live('a', 100) }, { event: live('b', 100) }]);
  });

  it('sends events that waited behind a long reply once that has left', () => {
    const { sink, sent, drain } = slowSink();
    const outbox = createOutbox(sink);
    outbox.reply({ id: 1, ok: true, result: [] }, () => undefined);
    sink.bufferedAmount = slowBytes + 1;
    outbox.event(live('a', 1));
    expect(sent).toHaveLength(1);
    drain();
    expect(sent[1]).toEqual({ event: live('a', 1) });
  });

  it('never drops a reply, and says when it has left', () => {
    const { sink, sent, drain } = slowSink();
    const outbox = createOutbox(sink);
    sink.bufferedAmount = slowBytes + 1;
    let left = 0;
    for (let id = 0; id < 5; id++) outbox.reply({ id, ok: true, result: [] }, () => left++);
    expect(sent.map(({ id }) => id)).toEqual([0, 1, 2, 3, 4]);
    expect(left).toBe(0);
    drain();
    expect(left).toBe(5);
  });
});
