import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startNode } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('simulate-command');
});
afterAll(() => folder.remove());

async function simulate(...args: string[]) {
  const program = startNode('sim/simulate/main.ts', args);
  const { code } = await program.ended;
  return { code, output: program.output() };
}

const site = ['--site', 'sim/scenarios/quillhaven-wash-house.yaml'];

describe('npm run simulate', () => {
  it('runs days at once, tells how far it is, and ends with a line a month', async () => {
    const { code, output } = await simulate(...site, '--from', '2031-06-29', '--days', '4');
    expect(output).toContain('simulate: 3 of 4 days');
    expect(output).toMatch(/^2031-06 .*\n2031-07 .*\nall /m);
    expect(output).toContain('drawn as in a wash-house');
    expect(code).toBe(0);
  });

  it('plays a scenario to machines, from the scenario’s own day on', async () => {
    const scenario = ['--scenario', 'sim/scenarios/days/liner-burst.yaml', '--days', '1', '--json'];
    const { code, output } = await simulate(...scenario);
    const report = JSON.parse(output.slice(output.indexOf('{')));
    expect(report.all.alarms).toBeGreaterThan(0);
    expect(report.unexplainedWaterFraction).toBeLessThan(1e-9);
    expect(code).toBe(0);
  });

  it('refuses a loop that cannot be, with the numbers', async () => {
    const pump = { ratedFlowLMin: 24, ratedHeadM: 0.5, ratedPowerW: 60 };
    const { code, output } = await simulate(
      '--site',
      writeSite(folder.file('weak.yaml'), demoContent({ pump })),
    );
    expect(output).toMatch(/^simulate: The pump cannot lift the water: it holds 0\.67 m/);
    expect(code).toBe(1);
  });

  it.each([
    ['neither site nor scenario', [], '--scenario FILE or --site FILE is needed'],
    ['a scenario that is not there', ['--scenario', 'nowhere.yaml'], 'nowhere.yaml: found no such file'],
    ['a day that is none', [...site, '--from', '2031-02-30'], 'A day is like 2031-01-01'],
    ['a day before any weather', [...site, '--from', '0001-01-01'], '1950 to 2200'],
    ['no days', [...site, '--days', '0'], 'A whole number from 1 to 3660'],
    ['a step that no controller takes', [...site, '--step', '60'], 'A whole number from 1 to 10'],
    ['an option that nobody knows', [...site, '--loudly'], '--loudly'],
  ])('refuses %s in one line', async (_what, args, words) => {
    const { code, output } = await simulate(...args);
    expect(code).toBe(2);
    expect(output.trim().split('\n')).toHaveLength(1);
    expect(output).toContain(words);
  });
});
