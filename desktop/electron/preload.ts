import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import type { MonitorApi, MonitorEvent, MonitorReply, MonitorWire } from '../../shared-types/monitor-api.ts';
import { callChannel, eventChannel } from './channels.ts';

/**
 * All that the page gets of the world outside: two functions. Neither hands over anything of Electron.
 * What they carry is checked on the other side.
 */
let lastId = 0;

const api = {
  async call(method: unknown, params: unknown): Promise<MonitorReply<never>> {
    const call = { id: ++lastId, method, params };
    const wire = (await ipcRenderer.invoke(callChannel, call)) as Exclude<MonitorWire, { event: unknown }>;
    return wire.ok ? { ok: true, result: wire.result as never } : { ok: false, problem: wire.problem };
  },
  listen(listener: (event: MonitorEvent) => void) {
    const hear = (_event: IpcRendererEvent, event: MonitorEvent) => listener(event);
    ipcRenderer.on(eventChannel, hear);
    return () => {
      ipcRenderer.off(eventChannel, hear);
    };
  },
} satisfies MonitorApi;

contextBridge.exposeInMainWorld('flatwater', api);
