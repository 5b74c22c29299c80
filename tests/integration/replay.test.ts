import { closeSync, copyFileSync, mkdirSync, openSync, statSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { logPath } from '../../controller/log/log.ts';
import { replayReportSchema } from '../../shared-types/log.ts';
import { recordHistory } from '../../sim/history.ts';
import { startNode } from '../support/process.ts';
import { itRefuses } from '../support/refusals.ts';
import { demoContent, siteOf } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('replay-command');
  const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
  const fromMs = Date.UTC(2031, 5, 20, 20);
  recordHistory({ site, dataFolder: folder.path, fromMs, toMs: fromMs + 20 * 3_600_000, seed: 1 });
}, 60_000);
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

  it.each([
    ['2031-06-20..2031-06-21', '2031-06-20 to 2031-06-21: all 7201 steps'],
    ['2031-06-21T09:00..2031-06-21T10:00', '2031-06-21: all 360 steps'],
  ])('replays the span %s', async (span, words) => {
    const { code, output } = await replay(span, ...data());
    expect(code).toBe(0);
    expect(output).toContain(words);
  });

  it('ends with 4 when all is the same that could be read of a damaged log', async () => {
    const site = 'quillhaven-wash-house';
    const path = logPath(folder.file('damaged'), site);
    mkdirSync(dirname(path), { recursive: true });
    copyFileSync(logPath(folder.path, site), path);
    // Pages in the last third of the file are leaves of the table of steps.
    const file = openSync(path, 'r+');
    writeSync(file, Buffer.alloc(8192, 0xff), 0, 8192, Math.floor((statSync(path).size * 0.7) / 4096) * 4096);
    closeSync(file);
    const { code, output } = await replay('latest', '--data', folder.file('damaged'));
    expect(code).toBe(4);
    expect(output).toContain('The log: the log is damaged');
  });

  itRefuses(
    (...args) => startNode('sim/replay/main.ts', [...args, ...data()]),
    [
      [['2031-01-01'], 'there are: 2031-06-20, 2031-06-21'],
      [['yesterday'], 'there are:'],
      [['latest', '--site', 'elsewhere'], 'there are: quillhaven-wash-house'],
      [[], "missing required argument 'day'"],
      [['latest', '--speed', '3'], "unknown option '--speed'"],
    ],
  );

  it('refuses a folder without a log', async () => {
    const { code, output } = await replay('latest', '--data', folder.file('nothing'));
    expect(code).toBe(2);
    expect(output).toContain('there is no log');
  });
});
