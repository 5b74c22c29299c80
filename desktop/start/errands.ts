import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pageFolder } from '../web/run.ts';
import { startChild } from './child.ts';
import type { Parts } from './parts.ts';

/** @returns why the page cannot be built, or undefined when it is there. */
export async function buildMissingPage(parts: Parts): Promise<string | undefined> {
  if (existsSync(join(pageFolder, 'index.html'))) return undefined;
  console.log('Building the page first.');
  return runToEnd(parts, 'build', new URL('./build-page.ts', import.meta.url), []);
}

/** @returns why the days cannot be recorded, or undefined. */
export function recordFirstDays(
  parts: Parts,
  dataFolder: string,
  untilMs: number,
): Promise<string | undefined> {
  console.log('A first start: recording three days of simulated operation. None of it was measured.');
  const module = new URL('./record-history.ts', import.meta.url);
  return runToEnd(parts, 'recording', module, [dataFolder, String(untilMs)]);
}

/** Runs a process that says 'done' at its end. @returns how it ended otherwise, in words. */
async function runToEnd(
  parts: Parts,
  name: string,
  module: URL,
  args: readonly string[],
): Promise<string | undefined> {
  const ready = (line: string) => (line === 'done' ? line : undefined);
  const child = parts.begin(() => startChild(name, module, args, ready));
  const ended = await child.ended;
  return (await child.ready) === undefined ? ended : undefined;
}
