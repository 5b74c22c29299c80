import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { MonitorApi } from '../../../shared-types/monitor-api.ts';

const electron = vi.hoisted(() => ({
  exposed: new Map<string, unknown>(),
  invoke: vi.fn(),
  handlers: new Map<string, (event: unknown, message: unknown) => void>(),
}));
vi.mock('electron', () => ({
  contextBridge: { exposeInMainWorld: (name: string, api: unknown) => electron.exposed.set(name, api) },
  ipcRenderer: {
    invoke: electron.invoke,
    on: (channel: string, handler: (event: unknown, message: unknown) => void) =>
      electron.handlers.set(channel, handler),
    off: (channel: string, handler: unknown) => {
      if (electron.handlers.get(channel) === handler) electron.handlers.delete(channel);
    },
  },
}));

const api = () => electron.exposed.get('flatwater') as MonitorApi;
beforeAll(() => import('../../../desktop/electron/preload.ts'));

describe('the preload script', () => {
  it('gives the page two functions and nothing else', () => {
    expect([...electron.exposed.keys()]).toEqual(['flatwater']);
    expect(Object.entries(api()).map(([name, value]) => [name, typeof value])).toEqual([
      ['call', 'function'],
      ['listen', 'function'],
    ]);
  });

  it('brings calls over and replies back', async () => {
    electron.invoke.mockResolvedValueOnce({ id: 1, ok: true, result: ['a'] });
    expect(await api().call('sites', {})).toEqual({ ok: true, result: ['a'] });
    expect(electron.invoke).toHaveBeenCalledWith('monitor-call', { id: 1, method: 'sites', params: {} });
    const problem = { severity: 'note', text: 'No.' };
    electron.invoke.mockResolvedValueOnce({ id: 2, ok: false, problem });
    expect(await api().call('sites', {})).toEqual({ ok: false, problem });
  });

  it('hands the event on without what Electron wraps around it, until it is stopped', () => {
    const listener = vi.fn();
    const stop = api().listen(listener);
    electron.handlers.get('monitor-event')?.({ sender: 'secret' }, { kind: 'host' });
    expect(listener.mock.calls).toEqual([[{ kind: 'host' }]]);
    stop();
    expect(electron.handlers.size).toBe(0);
  });
});
