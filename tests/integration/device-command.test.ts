import { describe, expect, it } from 'vitest';
import { startNode } from '../support/process.ts';

const site = ['--site', 'sim/scenarios/quillhaven-wash-house.yaml'];

describe("the simulated device's command line", () => {
  it.each([
    ['no site file', [], '--site FILE is needed'],
    ['a site file that is not there', ['--site', 'nowhere.yaml'], 'nowhere.yaml'],
    ['an address that is no broker', [...site, '--broker', 'junk'], 'mqtt://127.0.0.1:1883'],
    ['a broker and a serial port', [...site, '--broker', 'mqtt://h', '--serial', '/dev/null'], 'exclude'],
    ['a site without a broker and no broker', site, 'give one with --broker URL'],
    ['a speed of nought', [...site, '--speed', '0'], '0.01 to 3600'],
    ['a clock that is none', [...site, '--clock', 'noon'], 'SHOWS_MS@WALL_MS*SPEED'],
    ['a clock and a speed', [...site, '--clock', '0@0*1', '--speed', '2'], 'carries its own speed'],
    ['a fault that nobody knows', [...site, '--fault', 'gremlin'], 'gremlin'],
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

  it('tells its options and exit codes, and its faults', async () => {
    const help = startNode('sim/device/main.ts', ['--help']);
    expect((await help.ended).code).toBe(0);
    expect(help.output()).toContain('Exit codes:');
    const list = startNode('sim/device/main.ts', ['--list-faults']);
    expect((await list.ended).code).toBe(0);
    expect(list.output()).toContain('pump-dead');
  });
});
