import { afterEach, describe, expect, test } from 'vitest';
import type { Door } from '../../../desktop/ui/door.ts';
import { createImportFeed } from '../../../desktop/ui/store/import-feed.ts';
import { noImport, useImport } from '../../../desktop/ui/store/import-store.ts';
import { importMapSchema, pieceBytes } from '../../../shared-types/foreign-log.ts';

const upload = '7d1f4c1e-3f53-4d6c-9a51-0d7b4a3c2f10';
const map = importMapSchema.parse({
  time: { column: 'Time' },
  values: [{ column: 'Roof', channel: 'panOutletC', unit: 'C' }],
});

/** A door whose host answers by these; what was asked is kept. */
function doorOf(answers: Readonly<Record<string, (params: never) => unknown>>) {
  const asked: [string, unknown][] = [];
  const call = async (method: string, params: unknown) => {
    asked.push([method, params]);
    const result = await answers[method]?.(params as never);
    return result instanceof Error
      ? { ok: false, problem: { severity: 'error', text: result.message } }
      : { ok: true, result };
  };
  return { asked, door: { call } as unknown as Door };
}

const file = (bytes: number) => {
  const blob = new Blob([new Uint8Array(bytes).fill(65)]);
  return { name: 'attic.csv', size: bytes, slice: blob.slice.bind(blob) };
};
const noPause = async () => undefined;
const noDays = async () => undefined;

afterEach(() => useImport.setState(noImport));

describe('a file of another logger', () => {
  test('goes in pieces, and its beginning is read once all of it is there', async () => {
    const { asked, door } = doorOf({
      beginUpload: () => ({ upload }),
      uploadPiece: ({ at, base64 }: { at: number; base64: string }) => ({
        received: at + Buffer.from(base64, 'base64').length,
      }),
      uploadHead: () => ({ header: ['Time'] }),
    });
    await createImportFeed(door, noDays, noPause).sendFile(file(pieceBytes + 1));
    expect(asked.map(([method]) => method)).toEqual([
      ...['beginUpload', 'uploadPiece', 'uploadPiece', 'uploadHead'],
    ]);
    expect(asked[2]?.[1]).toEqual({ upload, at: pieceBytes, base64: 'QQ==' });
    expect(useImport.getState()).toMatchObject({
      file: { name: 'attic.csv', upload, sentFraction: 1, problem: null },
      head: { state: 'ready', value: { header: ['Time'] } },
    });
  });

  test('that is refused says why and goes no further', async () => {
    const { asked, door } = doorOf({ beginUpload: () => ({ upload }), uploadPiece: () => new Error('full') });
    await createImportFeed(door, noDays, noPause).sendFile(file(10));
    expect(useImport.getState().file).toMatchObject({ upload: null, problem: { text: 'full' } });
    expect(asked).toHaveLength(2);
  });

  test('is taken in, and then its days are asked for', async () => {
    const came = { site: 'x-imported', report: {} };
    const { asked, door } = doorOf({ importDays: () => came });
    const loaded: string[] = [];
    const seen: unknown[] = [];
    const stop = useImport.subscribe(({ run }) => seen.push(run));
    const feed = createImportFeed(door, async (site) => void loaded.push(site), noPause);
    await feed.takeIn('x', map, { clash: 'keep', write: true });
    stop();
    expect(seen).toEqual([
      { write: true, outcome: { state: 'running', progress: { doneFraction: 0, doing: 'waiting' } } },
      { write: true, outcome: { state: 'ready', result: came } },
    ]);
    expect(asked).toEqual([
      ['importDays', expect.objectContaining({ site: 'x', clash: 'keep', write: true })],
    ]);
    expect(loaded).toEqual(['x-imported']);
  });

  test('that is given up still tells what came of it', async () => {
    const { promise, resolve } = Promise.withResolvers<void>();
    const { asked, door } = doorOf({ importDays: () => promise.then(() => ({ site: 'x-imported' })) });
    const feed = createImportFeed(door, noDays, noPause);
    const done = feed.takeIn('x', map, { clash: 'keep', write: true });
    feed.cancelImport();
    expect(asked.map(([method]) => method)).toEqual(['importDays', 'cancelJob']);
    resolve();
    await done;
    expect(useImport.getState().run?.outcome.state).toBe('ready');
  });

  test('that is dropped while it is taken in tells nothing any more', async () => {
    const { promise, resolve } = Promise.withResolvers<void>();
    const { door } = doorOf({ importDays: () => promise.then(() => ({ site: 'x-imported' })) });
    const feed = createImportFeed(door, noDays, noPause);
    const done = feed.takeIn('x', map, { clash: 'keep', write: true });
    feed.dropFile();
    resolve();
    await done;
    expect(useImport.getState().run).toBeNull();
  });

  test('is dropped at the monitor as well', () => {
    const { asked, door } = doorOf({});
    useImport.setState({ file: { name: 'a', upload, sentFraction: 1, problem: null } });
    createImportFeed(door, noDays, noPause).dropFile();
    expect(asked).toEqual([['dropUpload', { upload }]]);
    expect(useImport.getState().file).toBeNull();
  });
});
