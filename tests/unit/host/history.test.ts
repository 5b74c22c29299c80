import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { createHistory, type History } from '../../../desktop/host/history.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const folder = temporaryFolder('history').path;
const opened: History[] = [];
let workers = 0;
const onRemarks = vi.fn();

/** A worker of a few lines instead of the real one. */
function historyWith(script: string, timeoutMs = 60_000): History {
  const path = join(folder, `worker-${++workers}.mjs`);
  writeFileSync(path, `import { parentPort, workerData } from 'node:worker_threads';\n${script}`);
  const history = createHistory({ dataFolder: folder, worker: pathToFileURL(path), timeoutMs, onRemarks });
  opened.push(history);
  return history;
}

const echo = `parentPort.on('message', ({ id, method, params }) => parentPort.postMessage({
  id, site: params.site, reply: { ok: true, result: [method, params.site, workerData.dataFolder] }, remarks: ['half of it'] }));`;

afterEach(async () => {
  await Promise.all(opened.splice(0).map((history) => history.close()));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('createHistory', () => {
  it('brings each answer to its own question, with the remarks of the log', async () => {
    const history = historyWith(echo);
    const replies = await Promise.all([
      history.ask('days', { site: 'a' }),
      history.ask('days', { site: 'b' }),
    ]);
    expect(replies).toEqual([
      { ok: true, result: ['days', 'a', folder] },
      { ok: true, result: ['days', 'b', folder] },
    ]);
    expect(onRemarks).toHaveBeenCalledWith('a', ['half of it']);
  });

  it.each([
    ['throws', `parentPort.on('message', () => { throw new Error('no disk'); });`, 'no disk'],
    ['exits', `parentPort.on('message', () => process.exit(3));`, 'code 3'],
    ['does not load', 'import "./not-there.mjs";', 'not-there'],
  ])(
    'ends its questions in words when the worker %s, and starts another for the next',
    async (_how, script, words) => {
      const history = historyWith(script);
      for (let time = 0; time < 2; time++)
        expect(await history.ask('days', { site: 'a' })).toEqual({
          ok: false,
          problem: { severity: 'error', text: expect.stringContaining(words) },
        });
    },
  );

  it('gives a question up that takes too long', async () => {
    const history = historyWith(`parentPort.on('message', () => { for (;;); });`, 50);
    expect(await history.ask('days', { site: 'a' })).toMatchObject({
      ok: false,
      problem: { text: expect.stringContaining('0.05 s') },
    });
  });

  it('ends open questions when it is closed', async () => {
    const history = historyWith(`parentPort.on('message', () => undefined);`);
    const reply = history.ask('days', { site: 'a' });
    await history.close();
    expect(await reply).toMatchObject({ ok: false, problem: { text: expect.stringContaining('closes') } });
  });
});
