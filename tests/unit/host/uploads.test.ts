import { existsSync, readFileSync } from 'node:fs';
import { expect, onTestFinished, test, vi } from 'vitest';
import { createUploads } from '../../../desktop/host/uploads.ts';

function newUploads() {
  const uploads = createUploads();
  onTestFinished(() => uploads.close());
  return uploads;
}

const bytes = (text: string) => new TextEncoder().encode(text);

test('a file comes in pieces, in order, and no longer than was said', async () => {
  const uploads = newUploads();
  const id = await uploads.begin(6);
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
  const id = await uploads.begin(6);
  const answers = await Promise.all([uploads.add(id, 0, bytes('abc')), uploads.add(id, 0, bytes('abc'))]);
  expect(answers).toEqual([3, 'the next piece begins at byte 0']);
});

test('of more than three files the one goes that nobody spoke of for longest', async () => {
  const uploads = newUploads();
  const [first, second, third] = [await uploads.begin(1), await uploads.begin(1), await uploads.begin(1)];
  for (const id of [first, second, third]) await uploads.add(id, 0, bytes('a'));
  expect(uploads.path(first)).toBeDefined();
  await uploads.begin(1);
  expect([first, second, third].map((id) => uploads.path(id) !== undefined)).toEqual([true, false, true]);
});

test('a file that is dropped is gone', async () => {
  const uploads = newUploads();
  const id = await uploads.begin(1);
  await uploads.add(id, 0, bytes('a'));
  const path = uploads.path(id) ?? '';
  expect(await uploads.drop(id)).toBe(true);
  expect(existsSync(path)).toBe(false);
  expect(await uploads.drop(id)).toBe(false);
  expect(await uploads.add(id, 1, bytes('b'))).toBe('there is no such file on its way any more');
});

test('nothing is left of files when the monitor closes', async () => {
  const uploads = newUploads();
  const id = await uploads.begin(1);
  await uploads.add(id, 0, bytes('a'));
  const path = uploads.path(id) ?? '';
  await uploads.close();
  expect(existsSync(path)).toBe(false);
});

test('a file stays as long as somebody speaks of it now and then, and goes after half an hour of silence', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  onTestFinished(() => void vi.useRealTimers());
  const uploads = newUploads();
  const id = await uploads.begin(1);
  await uploads.add(id, 0, bytes('a'));
  vi.advanceTimersByTime(20 * 60_000);
  expect(uploads.path(id)).toBeDefined();
  vi.advanceTimersByTime(20 * 60_000);
  expect(uploads.path(id)).toBeDefined();
  vi.advanceTimersByTime(30 * 60_000);
  expect(uploads.path(id)).toBeUndefined();
});
