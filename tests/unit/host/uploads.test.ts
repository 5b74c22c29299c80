import { existsSync, readFileSync } from 'node:fs';
import { expect, onTestFinished, test } from 'vitest';
import { createUploads } from '../../../desktop/host/uploads.ts';

function newUploads() {
  const uploads = createUploads();
  onTestFinished(() => uploads.close());
  return uploads;
}

const bytes = (text: string) => new TextEncoder().encode(text);

test('a file comes in pieces, in order, and no longer than was said', async () => {
  const uploads = newUploads();
  const id = (await uploads.begin(6)) ?? '';
  expect(await uploads.add(id, 0, bytes('abc'))).toBe(3);
  expect(await uploads.add(id, 0, bytes('abc'))).toBe('the next piece begins at byte 3');
  expect(await uploads.add(id, 4, bytes('e'))).toBe('the next piece begins at byte 3');
  expect(await uploads.add(id, 3, bytes('defg'))).toBe('the file is longer than was said');
  expect(uploads.path(id)).toBeUndefined();
  expect(await uploads.add(id, 3, bytes('def'))).toBe(6);
  expect(readFileSync(uploads.path(id) ?? '', 'utf8')).toBe('abcdef');
});

test('two pieces at a time are one too many', async () => {
  const uploads = newUploads();
  const id = (await uploads.begin(6)) ?? '';
  const answers = await Promise.all([uploads.add(id, 0, bytes('abc')), uploads.add(id, 0, bytes('abc'))]);
  expect(answers).toEqual([3, 'the next piece begins at byte 0']);
});

test('a file that is dropped is gone, and makes room for another', async () => {
  const uploads = newUploads();
  const ids = await Promise.all([1, 2, 3, 4].map(() => uploads.begin(1)));
  expect(ids.filter((id) => id === undefined)).toHaveLength(1);
  const [id = ''] = ids;
  await uploads.add(id, 0, bytes('a'));
  const path = uploads.path(id) ?? '';
  expect(await uploads.drop(id)).toBe(true);
  expect(existsSync(path)).toBe(false);
  expect(await uploads.drop(id)).toBe(false);
  expect(await uploads.add(id, 1, bytes('b'))).toBe('there is no such file on its way any more');
  expect(await uploads.begin(1)).toBeDefined();
});

test('nothing is left of files when the monitor closes', async () => {
  const uploads = newUploads();
  const id = (await uploads.begin(1)) ?? '';
  await uploads.add(id, 0, bytes('a'));
  const path = uploads.path(id) ?? '';
  await uploads.close();
  expect(existsSync(path)).toBe(false);
});
