import { execFile } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, expect, test } from 'vitest';
import { demoContent, writeSite } from '../../../support/sites.ts';
import { temporaryFolder } from '../../../support/temporary.ts';
import { leastMap, lines } from './import-rig.ts';

const folder = temporaryFolder('import-command');
afterAll(() => folder.remove());

const command = fileURLToPath(new URL('../../../../sim/import/main.ts', import.meta.url));

async function run(...args: string[]) {
  const options = [...args, '--data', folder.path];
  try {
    const { stdout } = await promisify(execFile)(process.execPath, [command, ...options]);
    return { code: 0, stdout, stderr: '' };
  } catch (thrown) {
    const { code, stdout, stderr } = thrown as { code: number; stdout: string; stderr: string };
    return { code, stdout, stderr };
  }
}

test('the command looks, keeps, and takes a kept map and a known loop by their names', async () => {
  const csv = folder.file('foreign.csv');
  writeFileSync(csv, lines('Time,Roof,Pump', '2031-06-21T08:00:00Z,40,on', '2031-06-21T08:01:00Z,41,on'));
  const map = folder.file('map.json');
  writeFileSync(map, JSON.stringify(leastMap));
  const site = writeSite(folder.file('site.yaml'), demoContent());
  const log = folder.file('quillhaven-wash-house-imported/log.sqlite');

  const look = await run(csv, '--map', map, '--site', site, '--preview', '--json');
  expect([look.code, JSON.parse(look.stdout).stepsAdded, existsSync(log)]).toEqual([0, 2, false]);

  const kept = await run(csv, '--map', map, '--site', site, '--keep-map', 'Attic');
  expect(kept.code).toBe(0);
  expect(kept.stdout).toContain('kept as days of quillhaven-wash-house-imported');
  expect(JSON.parse(readFileSync(folder.file('column-maps.json'), 'utf8')).maps[0].name).toBe('Attic');

  writeFileSync(csv, lines('Time,Roof,Pump', '2031-06-21T08:01:00Z,99,on', 'soon,1,on'));
  const again = await run(csv, '--map', 'Attic', '--site', 'quillhaven-wash-house', '--replace', '--json');
  expect([again.code, JSON.parse(again.stdout).stepsChanged]).toEqual([3, 1]);

  const wrong = await run(csv, '--map', 'Cellar', '--site', site);
  expect([wrong.code, wrong.stderr]).toEqual([2, "import: no file and no kept map is called 'Cellar'\n"]);
  const nowhere = await run(csv, '--map', 'Attic', '--site', 'elsewhere');
  expect(nowhere.stderr).toContain("tells of a loop called 'elsewhere'; give its site file");
});
