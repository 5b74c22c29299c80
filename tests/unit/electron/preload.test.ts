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
  it('gives the page three functions and nothing else', () => {
    expect([...electron.exposed.keys()]).toEqual(['flatwater']);
    expect(Object.entries(api()).map(([name, value]) => [name, typeof value])).toEqual([
      ['call', 'function'],
      ['listen', 'function'],
      ['save', 'function'],
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
    expect(electron.handlers.has('monitor-event')).toBe(false);
  });

  it('hands a text on to be saved', async () => {
    const save = electron.exposed.get('flatwater') as { save(text: unknown): Promise<unknown> };
    electron.invoke.mockResolvedValueOnce({ kind: 'saved' });
    expect(await save.save({ name: 'a.csv', text: 'a' })).toEqual({ kind: 'saved' });
    expect(electron.invoke).toHaveBeenLastCalledWith('monitor-save', { name: 'a.csv', text: 'a' });
  });

  it('shows the screen that the menu names, and nothing else', () => {
    const location = { hash: '#/live' };
    vi.stubGlobal('location', location);
    const go = (address: unknown) => electron.handlers.get('monitor-go')?.({}, address);
    go('#/days');
    expect(location.hash).toBe('#/days');
    for (const address of ['https://example.org/', 'javascript:1', 7, undefined]) go(address);
    expect(location.hash).toBe('#/days');
    vi.unstubAllGlobals();
  });
});
