import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { panCheckSchema } from '../../shared-types/pan-check.ts';
import { recordHistory } from '../../sim/history.ts';
import { startNode } from '../support/process.ts';
import { itRefuses } from '../support/refusals.ts';
import { demoContent, siteOf } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';

const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('pan-check-command');
  // The Azores keep summer time: a day begins at midnight UTC.
  const fromMs = Date.UTC(2031, 5, 15);
  const toMs = fromMs + 7 * 86_400_000 - 1;
  recordHistory({ site, dataFolder: folder.path, fromMs, toMs, seed: 1, kinds: ['clear'] });
}, 60_000);
afterAll(() => folder.remove());

const start = (...args: string[]) => startNode('sim/pan-check/main.ts', [...args, '--data', folder.path]);

describe('npm run pan-check', () => {
  it('finds a good pan as good as it was, as JSON and in words', async () => {
    const program = start('2031-06-15..2031-06-21', '--json');
    expect((await program.ended).code).toBe(0);
    const line = program
      .output()
      .split('\n')
      .find((text) => text.startsWith('{'));
    const check = panCheckSchema.parse(JSON.parse(line ?? ''));
    expect([check.site, check.days.length]).toEqual([site.name, 7]);
    const inWords = start('2031-06-18..2031-06-21', '--reference', '2031-06-15..2031-06-17');
    expect((await inWords.ended).code).toBe(0);
    expect(inWords.output()).toContain(check.findings[0]?.text);
    expect(inWords.output()).toMatch(/2031-06-15 to 2031-06-17 +3 /);
    expect(inWords.output()).toMatch(/2031-06-21 +\d+\.\d +\d+\.\d\d +\d+\.\d\d +\d+ \(/);
  }, 60_000);

  itRefuses(start, [
    [['2031-06-15..2031-06-19'], '6 days with steady flow'],
    [['2031-06-18', '--reference', '2031-06-15..2031-06-17'], 'There are too few days beside those'],
    [['2031-01-01'], 'there are: 2031-06-15'],
    [['latest', '--reference', '2030-01-01'], "nothing of '2030-01-01'"],
    [['latest', '--site', 'nobody'], 'nobody'],
    [[], 'missing required argument'],
  ]);
});
