import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import type { MonitorApi, MonitorWire } from '../../shared-types/monitor-api.ts';
import { refusal } from '../host/replies.ts';
import { answerCall, unknownCallId } from '../host/wire.ts';
import { callChannel, eventChannel } from './channels.ts';
import { isOwnPage } from './page-address.ts';

/** What the door needs of a window: a way to tell it something. */
export interface Listener {
  readonly webContents: { isDestroyed(): boolean; send(channel: string, message: unknown): void };
}

/** Opens the door between windows and the host. Only the page itself is answered, and only in its main frame. */
export function openDoor(
  ipc: Pick<IpcMain, 'handle'>,
  api: MonitorApi,
  windows: () => readonly Listener[],
): void {
  ipc.handle(callChannel, async (event: IpcMainInvokeEvent, raw: unknown): Promise<MonitorWire> => {
    if (comesFromPage(event)) return answerCall(api, raw);
    return { id: unknownCallId, ...refusal('error', 'Only the monitor itself may ask.') };
  });
  api.listen((event) => {
    for (const { webContents } of windows())
      if (!webContents.isDestroyed()) webContents.send(eventChannel, event);
  });
}

/** Whether a message comes from the page itself, in the main frame of its window. */
export function comesFromPage({ senderFrame, sender }: IpcMainInvokeEvent): boolean {
  return senderFrame !== null && senderFrame === sender.mainFrame && isOwnPage(senderFrame.url);
}
