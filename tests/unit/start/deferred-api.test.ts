import { describe, expect, it, vi } from 'vitest';
import { deferredApi } from '../../../desktop/start/deferred-api.ts';
import type { MonitorApi, MonitorEvent } from '../../../shared-types/monitor-api.ts';

function comingHost() {
  const listeners = new Set<(event: MonitorEvent) => void>();
  const host: MonitorApi = {
    call: async (method) => ({ ok: true, result: [method] }) as never,
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
  const { promise, resolve } = Promise.withResolvers<MonitorApi>();
  return { api: deferredApi(promise), listeners, come: () => resolve(host), came: promise };
}

describe('deferredApi', () => {
  it('answers the calls that waited once the host is there', async () => {
    const { api, come } = comingHost();
    const reply = api.call('sites', {});
    come();
    expect(await reply).toEqual({ ok: true, result: ['sites'] });
  });

  it('hands its listeners on, but not those that left before', async () => {
    const { api, listeners, come, came } = comingHost();
    const stays = vi.fn();
    const stop = api.listen(stays);
    api.listen(vi.fn())();
    come();
    await came;
    expect([...listeners]).toEqual([stays]);
    stop();
    expect(listeners.size).toBe(0);
  });
});
