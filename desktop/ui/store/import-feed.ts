import {
  type Clash,
  type FileForm,
  type ImportMap,
  importedName,
  pieceBytes,
} from '../../../shared-types/foreign-log.ts';
import type { MonitorReply } from '../../../shared-types/monitor-api.ts';
import type { Door } from '../door.ts';
import { noImport, type SentFile, useImport } from './import-store.ts';
import { createJobSlot, newJob } from './job-slot.ts';
import { loadedOf, loadInto } from './loaded.ts';

/** What of a file is needed. */
type Content = Pick<Blob, 'size' | 'slice'> & { readonly name: string };

/** Sends files of another logger to the monitor, and has their days taken in. */
export interface ImportFeed {
  sendFile(file: Content): Promise<void>;
  /** Reads the beginning of the file again, as it is said to be written. */
  readHead(form: FileForm): Promise<void>;
  /** @param write - False: only a look at what is understood. */
  takeIn(
    site: string,
    map: ImportMap,
    how: { readonly clash: Clash; readonly write: boolean },
  ): Promise<void>;
  /** What came of it is still told: days that were in by then stay. */
  cancelImport(): void;
  dropFile(): void;
  loadMaps(): Promise<void>;
  keepMap(name: string, map: ImportMap): Promise<void>;
  forgetMap(name: string): Promise<void>;
}

/** Pause between two pieces, so that the door does not take them for a flood [ms]. */
const piecePauseMs = 40;

export function createImportFeed(
  door: Door,
  loadDays: (site: string) => Promise<void>,
  pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms)),
): ImportFeed {
  let current = '';
  const slot = createJobSlot(door, 'importDays');

  function dropFile(): void {
    current = '';
    slot.cancel();
    const { file, maps } = useImport.getState();
    if (file !== null && file.upload !== null) void door.call('dropUpload', { upload: file.upload });
    useImport.setState({ ...noImport, maps });
  }

  async function sendFile(file: Content): Promise<void> {
    dropFile();
    const own = newJob();
    current = own;
    const put = (change: Partial<SentFile>) => {
      if (current !== own) return;
      const before = { name: file.name, upload: null, sentFraction: 0, problem: null };
      useImport.setState((state) => ({ file: { ...(state.file ?? before), ...change } }));
    };
    put({});
    const begun = await door.call('beginUpload', { bytes: file.size });
    if (!begun.ok) return put({ problem: begun.problem });
    const { upload } = begun.result;
    for (let at = 0; at < file.size; ) {
      const piece = new Uint8Array(await file.slice(at, at + pieceBytes).arrayBuffer());
      const sent = await door.call('uploadPiece', { upload, at, base64: base64Of(piece) });
      if (current !== own) return void door.call('dropUpload', { upload });
      if (!sent.ok) return put({ problem: sent.problem });
      at = sent.result.received;
      put({ sentFraction: at / file.size });
      if (at < file.size) await pause(piecePauseMs);
    }
    put({ upload });
    await readHead({ headerLine: 1 });
  }

  async function readHead(form: FileForm): Promise<void> {
    const upload = useImport.getState().file?.upload;
    if (upload === null || upload === undefined) return;
    const asked = current;
    useImport.setState({ run: null });
    const reply = await door.call('uploadHead', { upload, form });
    if (asked === current) useImport.setState({ head: loadedOf(reply) });
  }

  async function takeIn(...[site, map, { clash, write }]: Parameters<ImportFeed['takeIn']>): Promise<void> {
    const upload = useImport.getState().file?.upload ?? '';
    await slot.run({ upload, site, map, clash, write }, (outcome) =>
      useImport.setState({ run: { write, outcome } }),
    );
    if (write) await loadDays(importedName(site));
  }

  function putMaps(reply: MonitorReply<'columnMaps'>): void {
    useImport.setState({ maps: loadedOf(reply) });
  }

  return {
    sendFile,
    readHead,
    takeIn,
    cancelImport: slot.end,
    dropFile,
    loadMaps: () =>
      loadInto(
        useImport.getState().maps,
        (maps) => useImport.setState({ maps }),
        door.call('columnMaps', {}),
      ),
    keepMap: async (name, map) => putMaps(await door.call('keepColumnMap', { name, map })),
    forgetMap: async (name) => putMaps(await door.call('forgetColumnMap', { name })),
  };
}

function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
