import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { startChild } from '../../../desktop/start/child.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const folder = temporaryFolder('child').path;
afterAll(() => rmSync(folder, { recursive: true }));
let scripts = 0;

function child(script: string, args: string[] = []) {
  const path = join(folder, `${++scripts}.mjs`);
  writeFileSync(path, script);
  return startChild('helper', pathToFileURL(path), args, (line) => /^ready (\S+)$/.exec(line)?.[1]);
}

const log = vi.spyOn(console, 'log').mockImplementation(() => undefined);
const error = vi.spyOn(console, 'error').mockImplementation(() => undefined);
beforeEach(() => {
  log.mockImplementation(() => undefined);
  error.mockImplementation(() => undefined);
});

const waits = `process.on('SIGTERM', () => process.exit(0)); setInterval(() => {}, 1000);`;

describe('startChild', () => {
  it('tells what the child says when it is ready, and prints its other lines under its name', async () => {
    const helper = child(
      // It listens for signals before it says that it is ready.
      `${waits} console.log('good morning'); console.error('helper: mind the step'); console.log('ready ' + process.argv[2]);`,
      ['mqtt://x'],
    );
    expect(await helper.ready).toBe('mqtt://x');
    await helper.stop();
    expect(log.mock.calls).toEqual([['helper: good morning']]);
    expect(error.mock.calls).toEqual([['helper: mind the step']]);
    expect(await helper.ended).toBe('the helper ended with code 0');
  });

  it('says how a child ended that never was ready', async () => {
    const helper = child('process.exit(4)');
    expect(await helper.ready).toBeUndefined();
    expect(await helper.ended).toBe('the helper ended with code 4');
  });

  it('ends a child that does not listen', async () => {
    const helper = child(
      `process.on('SIGTERM', () => {}); console.log('ready x'); setInterval(() => {}, 1000);`,
    );
    await helper.ready;
    void helper.stop();
    helper.kill();
    expect(await helper.ended).toBe('the helper ended with SIGKILL');
  });

  it('gives the child a channel by which it hears of the death of its parent', async () => {
    const helper = child(`${waits} console.log('ready ' + typeof process.send);`);
    expect(await helper.ready).toBe('function');
    await helper.stop();
  });
});
