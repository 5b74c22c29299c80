import { describe, expect, it } from 'vitest';
import { startNode } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { temporaryFolder } from '../support/temporary.ts';

const site = ['--site', 'sim/scenarios/quillhaven-wash-house.yaml'];

describe("the simulated device's command line", () => {
  it.each([
    ['neither site file nor scenario', [], '--site FILE or --scenario FILE is needed'],
    ['a site file that is not there', ['--site', 'nowhere.yaml'], 'nowhere.yaml'],
    ['an address that is no broker', [...site, '--broker', 'junk'], 'mqtt://127.0.0.1:1883'],
    ['a broker and a serial port', [...site, '--broker', 'mqtt://h', '--serial', '/dev/null'], 'exclude'],
    ['a site without a broker and no broker', site, 'give one with --broker URL'],
    ['a speed of nought', [...site, '--speed', '0'], '0.01 to 3600'],
    ['a clock that is none', [...site, '--clock', 'noon'], 'SHOWS_MS@WALL_MS*SPEED'],
    ['a clock and a speed', [...site, '--clock', '0@0*1', '--speed', '2'], 'carries its own speed'],
    ['a fault that nobody knows', [...site, '--fault', 'gremlin'], 'gremlin'],
    ['a size beyond the range of its fault', [...site, '--fault', 'pan-leak=2000'], '0 to 1000 (L/h)'],
    [
      'a fault at no time',
      [...site, '--fault', 'pump-dead@noon'],
      'NAME[:CHANNEL[/OTHER]][@FROM][~UNTIL][=SIZE]',
    ],
    [
      'a fault of a sensor that the site has not',
      [...site, '--broker', 'mqtt://h', '--fault', 'sensor-open:reservoirC'],
      'no sensor reservoirC',
    ],
    [
      'a silent topic on a serial line',
      [...site, '--serial', '/dev/null', '--fault', 'topic-silent:panOutletC'],
      'on a serial line',
    ],
    ['a scenario that is not there', ['--scenario', 'nowhere.yaml'], 'nowhere.yaml: found no such file'],
    ['a kind of day that nobody knows', [...site, '--weather', 'purple'], 'purple'],
    [
      'a password file that cannot be read',
      [...site, '--broker', 'mqtt://h', '--password-file', 'nowhere.txt'],
      'nowhere.txt',
    ],
    ['an option that nobody knows', [...site, '--loudly'], '--loudly'],
  ])('refuses %s in one line and starts nothing', async (_what, args, words) => {
    const program = startNode('sim/device/main.ts', args);
    expect(await program.ended).toEqual({ code: 2, signal: null });
    expect(program.output().trim().split('\n')).toHaveLength(1);
    expect(program.output()).toContain(words);
  });

  it('refuses a loop that cannot be, with the numbers', async () => {
    const folder = temporaryFolder('impossible');
    try {
      const pump = { ratedFlowLMin: 24, ratedHeadM: 0.5, ratedPowerW: 60 };
      const file = writeSite(folder.file('site.yaml'), demoContent({ pump }));
      const program = startNode('sim/device/main.ts', ['--site', file, '--broker', 'mqtt://127.0.0.1:1']);
      expect(await program.ended).toEqual({ code: 2, signal: null });
      expect(program.output()).toMatch(
        /^The pump cannot lift the water: it holds 0\.67 m at no flow, .* lifted \d/,
      );
    } finally {
      folder.remove();
    }
  });

  it('tells its options and exit codes, its faults and its scenarios', async () => {
    const help = startNode('sim/device/main.ts', ['--help']);
    expect((await help.ended).code).toBe(0);
    expect(help.output()).toContain('Exit codes:');
    const list = startNode('sim/device/main.ts', ['--list-faults']);
    expect((await list.ended).code).toBe(0);
    expect(list.output()).toContain('pump-dead');
    const scenarios = startNode('sim/device/main.ts', ['--list-scenarios']);
    expect((await scenarios.ended).code).toBe(0);
    expect(scenarios.output()).toMatch(/^sim\/scenarios\/days\/welded-relay\.yaml +\S/m);
  });
});
