import { readdirSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSiteFile } from '../../../../controller/site-file.ts';
import { faultNames } from '../../../../sim/plant/faults.ts';
import { impossibilities, impossibilityText } from '../../../../sim/plant/impossible.ts';
import { partsOf } from '../../../../sim/plant/parts.ts';
import { scenarioFiles, scenarioList } from '../../../../sim/scenario/list.ts';
import { readScenario } from '../../../../sim/scenario/read.ts';
import type { Scenario } from '../../../../sim/scenario/scenario.ts';

const files = scenarioFiles();
const names = files.map((file) => basename(file, '.yaml'));

function scenarioOf(name: string): Scenario {
  const read = readScenario(resolve('sim/scenarios/days', `${name}.yaml`));
  if (!read.ok) throw new Error(read.faults.join('\n'));
  return read.value;
}

/** Every hour of the first days of a scenario. */
function hours(name: string, days: number) {
  const { weather, startMs } = scenarioOf(name);
  return Array.from({ length: 24 * days }, (_, hour) => weather.at((startMs ?? 0) + hour * 3_600_000));
}

describe('the scenarios that come with the program', () => {
  it.each(names)('%s is whole, and its loop can be', (name) => {
    const { site, setup, startMs } = scenarioOf(name);
    expect(impossibilities(partsOf(site, setup)).map(impossibilityText)).toEqual([]);
    expect(startMs).toBeTypeOf('number');
  });

  it('are all listed, with their titles', () => {
    const lines = scenarioList(process.cwd());
    expect(lines).toHaveLength(files.length);
    expect(lines.find((line) => line.includes('/welded-relay.yaml'))).toMatch(
      /^sim\/scenarios\/days\/welded-relay\.yaml +The relay of the pump welds shut/,
    );
  });

  it('play every fault that the loop can have', () => {
    const played = new Set(names.flatMap((name) => scenarioOf(name).wishes.map(({ fault }) => fault.name)));
    expect(faultNames.filter((name) => !played.has(name))).toEqual([]);
  });

  const frosts = names.filter((name) => name.startsWith('frost-'));
  it.each(frosts)('%s freezes in its first night', (name) => {
    expect(Math.min(...hours(name, 1).map(({ airC }) => airC))).toBeLessThan(0);
  });

  it('snow falls where it is said to', () => {
    const fallenMm = hours('snow-on-sheet', 1).reduce((sum, { snowMmH }) => sum + snowMmH, 0);
    expect(fallenMm).toBeGreaterThan(1);
  });

  it('hot days are hot, still and clear', () => {
    for (const name of ['hot-and-still', 'liner-heat-dead-pump']) {
      const noon = hours(name, 1).reduce((best, now) =>
        now.irradianceWM2 > best.irradianceWM2 ? now : best,
      );
      expect(noon.irradianceWM2).toBeGreaterThan(800);
      expect(noon.windMs).toBeLessThan(2);
    }
  });
});

describe('the sites', () => {
  const sites = readdirSync('sim/scenarios').filter((name) => name.endsWith('.yaml'));
  const read = sites.map((name) => {
    const result = readSiteFile(resolve('sim/scenarios', name));
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    return result.site;
  });

  it('can all be built', () => {
    expect(read.flatMap((site) => impossibilities(partsOf(site)))).toEqual([]);
  });

  it('have every outlet, both plumbings and both links among them', () => {
    const among = <T>(look: (site: (typeof read)[number]) => T) => [...new Set(read.map(look))].sort();
    expect(among(({ outlet }) => outlet)).toEqual(['corner', 'high-with-low-drain', 'low']);
    expect(among(({ plumbing }) => plumbing)).toEqual(['open-store', 'reservoir']);
    expect(among(({ link }) => link.kind)).toEqual(['mqtt', 'serial']);
  });
});
