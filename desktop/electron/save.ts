import { writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Dialog, IpcMain, IpcMainInvokeEvent } from 'electron';
import { type SaveOutcome, savedTextSchema } from '../../shared-types/saved-text.ts';
import { wordsOf } from '../host/replies.ts';
import { en } from '../ui/text/en.ts';
import { saveChannel } from './channels.ts';
import { comesFromPage } from './door.ts';

/** Lets the page save a text where a person says: the dialog asks, whatever the page would like. */
export function openSaveDoor(ipc: Pick<IpcMain, 'handle'>, dialog: Pick<Dialog, 'showSaveDialog'>): void {
  ipc.handle(saveChannel, async (event: IpcMainInvokeEvent, raw: unknown): Promise<SaveOutcome> => {
    const asked = savedTextSchema.safeParse(raw);
    if (!comesFromPage(event) || !asked.success) return { kind: 'failed', text: en.desktop.notOurs };
    const { name, text } = asked.data;
    // The name is a proposal: no folder is taken from it.
    const { canceled, filePath } = await dialog.showSaveDialog({ defaultPath: basename(name) });
    if (canceled) return { kind: 'dropped' };
    return writeFile(filePath, text).then(
      () => ({ kind: 'saved' }),
      (thrown) => ({ kind: 'failed', text: en.desktop.notSaved(wordsOf(thrown)) }),
    );
  });
}
