import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loopFitSchema } from '../../shared-types/tuning.ts';
import { recordHistory } from '../../sim/history.ts';
import { startNode } from '../support/process.ts';
import { itRefuses } from '../support/refusals.ts';
import { demoContent, siteOf } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';

const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('fit-command');
  // The Azores keep summer time: the 21st begins at midnight UTC; of the 22nd there is too little.
  const fromMs = Date.UTC(2031, 5, 21);
  const toMs = fromMs + 27 * 3_600_000;
  recordHistory({ site, dataFolder: folder.path, fromMs, toMs, seed: 1, kinds: ['clear'] });
}, 60_000);
afterAll(() => folder.remove());

const start = (...args: string[]) => startNode('sim/identify/main.ts', [...args, '--data', folder.path]);
const keptFits = () =>
  readdirSync(folder.path, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.includes('.loop.json'),
  );

describe('npm run fit', () => {
  it('keeps nothing when it is interrupted', async () => {
    const program = start('2031-06-21', '--keep');
    await program.line(/^fit: round 1, step 1: misfit/, 60_000);
    process.kill(program.pid, 'SIGINT');
    expect((await program.ended).signal).toBe('SIGINT');
    expect(keptFits()).toEqual([]);
  }, 120_000);

  it('fits a logged day, says so, and keeps the fit beside the log when asked', async () => {
    const program = start('2031-06-21', '--json', '--keep');
    expect((await program.ended).code).toBe(0);
    const lines = program.output().split('\n');
    const fit = loopFitSchema.parse(JSON.parse(lines.find((line) => line.startsWith('{')) ?? ''));
    expect([fit.site, fit.days, fit.converged]).toEqual([site.name, ['2031-06-21'], true]);
    const path = program.output().match(/^fit: kept in (.*)$/m)?.[1] ?? '';
    expect(existsSync(path)).toBe(true);
    expect(loopFitSchema.parse(JSON.parse(readFileSync(path, 'utf8')))).toEqual(fit);
    expect(keptFits()).toHaveLength(1);
  }, 120_000);

  itRefuses(start, [
    [['2031-06-22'], 'the log covers'],
    [['2031-01-01'], 'there are: 2031-06-21, 2031-06-22'],
    [['latest', '--site', 'nobody'], 'nobody'],
    [['latest', '--unheard-of'], 'unknown option'],
    [[], 'missing required argument'],
  ]);
});
