import { expect, it, vi } from 'vitest';
import { loadPatiently } from '../../../desktop/ui/load-patiently.ts';

it('gives what was loaded and leaves the page alone', async () => {
  const page = { served: vi.fn(async () => undefined), reload: vi.fn() };
  expect(await loadPatiently(async () => 'part', page)).toBe('part');
  expect(page.reload).not.toHaveBeenCalled();
});

it('loads the page anew after a failure, once the monitor serves it again', async () => {
  const back = Promise.withResolvers<void>();
  const page = { served: () => back.promise, reload: vi.fn() };
  void loadPatiently(() => Promise.reject(new TypeError('away')), page);
  await new Promise(setImmediate);
  expect(page.reload).not.toHaveBeenCalled();
  back.resolve();
  await vi.waitFor(() => expect(page.reload).toHaveBeenCalledOnce());
});
