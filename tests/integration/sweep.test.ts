import { existsSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sweepReportSchema } from '../../shared-types/tuning.ts';
import { recordHistory } from '../../sim/history.ts';
import { startNode } from '../support/process.ts';
import { itRefuses } from '../support/refusals.ts';
import { demoContent, siteOf } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('sweep-command');
  const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
  // The Azores keep summer time: the 21st begins at midnight UTC; of the 22nd there is too little.
  const fromMs = Date.UTC(2031, 5, 21);
  recordHistory({
    site,
    dataFolder: folder.path,
    fromMs,
    toMs: fromMs + 27 * 3_600_000,
    seed: 1,
    kinds: ['clear'],
  });
}, 60_000);
afterAll(() => folder.remove());

const start = (...args: string[]) =>
  startNode('sim/replay/sweep/main.ts', [...args, '--data', folder.path, '--samples', '0']);
const over = ['--over', 'startDifferenceK=1:6:2'];

describe('npm run sweep', () => {
  it('tries settings on a logged day, and keeps what it found', async () => {
    const resume = folder.file('kept/sweep.json');
    const both = [...over, '--over', 'fillDifferenceK=1:1:1'];
    const program = start('2031-06-21', ...both, '--resume', resume, '--json');
    const { code } = await program.ended;
    expect(code).toBe(0);
    const text = program
      .output()
      .split('\n')
      .find((line) => line.startsWith('{'));
    const report = sweepReportSchema.parse(JSON.parse(text ?? ''));
    expect(report.days).toEqual(['2031-06-21']);
    expect(report.points.map(({ change }) => change)).toEqual([
      {},
      { fillDifferenceK: 1 },
      { startDifferenceK: 6, fillDifferenceK: 1 },
    ]);
    // Filled earlier, the pan holds water while the logged one was empty.
    expect(report.points[0]?.beyondLogS).toBe(0);
    expect(report.points[1]?.beyondLogS).toBeGreaterThanOrEqual(600);
    expect(report.points[0]?.heatHomeJ.value).toBeGreaterThan(3.6e7);
    expect(existsSync(resume)).toBe(true);

    // What is kept is not done again: with it, the days' worlds are not even made.
    const again = start('2031-06-21..2031-06-21', ...both, '--resume', resume);
    expect((await again.ended).code).toBe(0);
    expect(again.output()).toMatch(/^2031-06-21: 3 sets of settings/);
  }, 60_000);

  it('ends with 130 when it is interrupted, and says how to go on', async () => {
    const resume = folder.file('interrupted.json');
    const program = start('2031-06-21', '--over', 'startDelayS=0:600:9', '--resume', resume);
    await program.line(/^\d+ of 10 outcomes/);
    process.kill(program.pid, 'SIGINT');
    expect((await program.ended).code).toBe(130);
    expect(program.output()).toContain(`the same command goes on from ${resume}`);
    expect(existsSync(resume)).toBe(true);
  }, 60_000);

  it('says why when no day can be lived again', async () => {
    const program = start('2031-06-22', '--over', 'stopDifferenceK=0.2:5:2');
    expect((await program.ended).code).toBe(2);
    expect(program.output()).toContain('the log covers');
  }, 60_000);

  itRefuses(start, [
    [['2031-06-21'], 'give one range or more'],
    [['2031-06-21', '--over', 'startDifferenceK=6:1:2'], 'runs from 6 down to 1'],
    [['2031-01-01', ...over], 'there are: 2031-06-21, 2031-06-22'],
    [['2031-06-21T09:00..2031-06-21T10:00', ...over], 'whole days'],
    [['latest', ...over, '--workers', '0'], '--workers is a whole number from 1 to 64'],
  ]);
});
