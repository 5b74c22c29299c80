import { randomUUID } from 'node:crypto';
import { type FileHandle, mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Files on their way from a screen, each below the system's temporary folder until it is dropped or forgotten. */
export interface Uploads {
  /** Makes room for a file; where there are too many, the one that nobody spoke of for longest goes. */
  begin(bytes: number): Promise<string>;
  /** Adds a piece. @returns bytes received so far, or in words why it was not taken. */
  add(upload: string, at: number, piece: Uint8Array): Promise<number | string>;
  /** Path of a file that has arrived wholly. */
  path(upload: string): string | undefined;
  drop(upload: string): Promise<boolean>;
  close(): Promise<void>;
}

interface Upload {
  readonly folder: string;
  readonly file: FileHandle;
  readonly bytes: number;
  received: number;
  busy: boolean;
  timer: NodeJS.Timeout;
}

/** Most files at a time, and how long one is kept that nobody speaks of [ms]. Design choices. */
const mostUploads = 3;
const idleMs = 30 * 60_000;

export function createUploads(): Uploads {
  const uploads = new Map<string, Upload>();

  async function drop(id: string): Promise<boolean> {
    const upload = uploads.get(id);
    if (upload === undefined) return false;
    uploads.delete(id);
    clearTimeout(upload.timer);
    await upload.file.close();
    await rm(upload.folder, { recursive: true, force: true });
    return true;
  }

  function expireLater(id: string): NodeJS.Timeout {
    return setTimeout(() => void drop(id), idleMs).unref();
  }

  /** From now on it stands last among those that would go, and its time begins anew. */
  function speakOf(id: string, upload: Upload): void {
    if (!uploads.delete(id)) return;
    uploads.set(id, upload);
    clearTimeout(upload.timer);
    upload.timer = expireLater(id);
  }

  return {
    async begin(bytes) {
      const folder = await mkdtemp(join(tmpdir(), 'flatwater-upload-'));
      const file = await open(join(folder, 'foreign.csv'), 'wx', 0o600);
      const id = randomUUID();
      uploads.set(id, { folder, file, bytes, received: 0, busy: false, timer: expireLater(id) });
      for (const oldest of [...uploads.keys()].slice(0, -mostUploads)) await drop(oldest);
      return id;
    },
    async add(id, at, piece) {
      const upload = uploads.get(id);
      if (upload === undefined) return 'there is no such file on its way any more';
      if (upload.busy || at !== upload.received) return `the next piece begins at byte ${upload.received}`;
      if (at + piece.length > upload.bytes) return 'the file is longer than was said';
      upload.busy = true;
      try {
        // At its own place: what a full disk took of a piece before is written over.
        const { bytesWritten } = await upload.file.write(piece, 0, piece.length, at);
        upload.received += bytesWritten;
      } finally {
        upload.busy = false;
      }
      speakOf(id, upload);
      return upload.received;
    },
    path(id) {
      const upload = uploads.get(id);
      if (upload === undefined || upload.received < upload.bytes) return undefined;
      speakOf(id, upload);
      return join(upload.folder, 'foreign.csv');
    },
    drop,
    async close() {
      await Promise.all([...uploads.keys()].map(drop));
    },
  };
}
