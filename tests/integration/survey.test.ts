import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startNode } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('survey-command');
});
afterAll(() => folder.remove());

async function survey(...args: string[]) {
  const program = startNode('sim/survey/main.ts', args);
  const { code } = await program.ended;
  return { code, output: program.output() };
}

describe('npm run survey', () => {
  it('tells of a loop that can be built', async () => {
    const { code, output } = await survey('--site', 'sim/scenarios/quillhaven-wash-house.yaml');
    expect(output).toMatch(/^Quillhaven wash-house \(quillhaven-wash-house\)/);
    expect(output).toMatch(/Load of that water +39\.9 kg\/m2/);
    expect(output).toContain('A licensed person must check');
    expect(output).not.toContain('Cannot be built');
    expect(code).toBe(0);
  });

  it('refuses a loop that cannot be, for machines as well', async () => {
    const pump = { ...(demoContent()['pump'] as object), ratedHeadM: 1 };
    const site = writeSite(`${folder.path}/weak.yaml`, demoContent({ pump }));
    const { code, output } = await survey('--site', site, '--json');
    expect(JSON.parse(output)).toMatchObject({ refusals: [{ code: 'pump-cannot-lift' }] });
    expect(code).toBe(1);
  });

  it('takes from a scenario what no site file says', async () => {
    writeSite(`${folder.path}/site.yaml`, demoContent());
    const scenario = { schema: 1, title: 'Wide pipes', site: 'site.yaml', traits: { pipeInsideMm: 32 } };
    const { code, output } = await survey('--scenario', writeSite(`${folder.path}/wide.yaml`, scenario));
    expect(output).toContain('siphon-doubtful: 0.41 m/s in the return pipe');
    expect(code).toBe(0);
  });

  const wrong: readonly (readonly [string, readonly string[], string])[] = [
    ['no file', [], '--site or --scenario names the loop'],
    ['a file that is not there', ['--site', 'nowhere.yaml'], 'nowhere.yaml: found no such file'],
    ['a scenario that is not there', ['--scenario', 'nowhere.yaml'], 'nowhere.yaml: found no such file'],
    ['an option of its own', ['--roof'], "unknown option '--roof'"],
  ];
  it.each(wrong)('ends with 2 for %s', async (_, args, text) => {
    const { code, output } = await survey(...args);
    expect(output).toContain(text);
    expect(code).toBe(2);
  });

  it('helps', async () => {
    const { code, output } = await survey('--help');
    expect(output).toContain('Ends with 0 when the loop can be built, 1 when it cannot');
    expect(code).toBe(0);
  });
});
