import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { replayReportSchema } from '../../shared-types/log.ts';
import { recordHistory } from '../../sim/history.ts';
import { startNode } from '../support/process.ts';
import { demoContent, siteOf } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('replay-command');
  const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
  const fromMs = Date.UTC(2031, 5, 20, 20);
  recordHistory({ site, dataFolder: folder.path, fromMs, toMs: fromMs + 20 * 3_600_000, seed: 1 });
});
afterAll(() => folder.remove());

async function replay(...args: string[]) {
  const program = startNode('sim/replay/main.ts', args);
  const { code } = await program.ended;
  return { code, output: program.output() };
}
const data = () => ['--data', folder.path];

describe('npm run replay', () => {
  it('lists the days', async () => {
    const { code, output } = await replay('list', ...data());
    expect(code).toBe(0);
    expect(output).toMatch(/^2031-06-20 .*\n2031-06-21 .*\n$/);
  });

  it('replays the latest day and reports for people', async () => {
    const { code, output } = await replay('latest', ...data());
    expect(code).toBe(0);
    expect(output).toContain('2031-06-21: all 5761 steps decided the same');
    expect(output).toMatch(/Heat home +\d+\.\d{3} +\d+\.\d{3} kWh/);
  });

  it('reports for machines', async () => {
    const { code, output } = await replay(
      '2031-06-20',
      '--json',
      '--site',
      'quillhaven-wash-house',
      ...data(),
    );
    expect(code).toBe(0);
    expect(replayReportSchema.parse(JSON.parse(output))).toMatchObject({ day: '2031-06-20', same: true });
  });

  const wrong = [
    [['2031-01-01'], 'there are: 2031-06-20, 2031-06-21'],
    [['yesterday'], 'there are:'],
    [['latest', '--site', 'elsewhere'], 'there are: quillhaven-wash-house'],
    [[], "missing required argument 'day'"],
    [['latest', '--speed', '3'], "unknown option '--speed'"],
  ] as const;
  it.each(wrong)('refuses %j with code 2 and words', async (args, words) => {
    const { code, output } = await replay(...args, ...data());
    expect(code).toBe(2);
    expect(output).toContain(words);
  });

  it('refuses a folder without a log', async () => {
    const { code, output } = await replay('latest', '--data', folder.file('nothing'));
    expect(code).toBe(2);
    expect(output).toContain('there is no log');
  });
});
