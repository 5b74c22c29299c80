import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import type { MonitorApi, MonitorEvent, MonitorReply, MonitorWire } from '../../shared-types/monitor-api.ts';
import type { SavedText, SaveOutcome } from '../../shared-types/saved-text.ts';
import { callChannel, eventChannel, goChannel, saveChannel } from './channels.ts';

/** The page's own, which its scripts see as well. */
declare const location: { hash: string };

/**
 * All that the page gets of the world outside: three functions. None hands over anything of Electron.
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
  save: (text: SavedText): Promise<SaveOutcome> => ipcRenderer.invoke(saveChannel, text),
} satisfies MonitorApi & { save: unknown };

contextBridge.exposeInMainWorld('flatwater', api);

// The menu names a screen; the page follows its own address.
ipcRenderer.on(goChannel, (_event: IpcRendererEvent, address: unknown) => {
  if (typeof address === 'string' && address.startsWith('#/')) location.hash = address;
});
