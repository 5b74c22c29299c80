import { describe, expect, it } from 'vitest';
import { type Machine, missingNeeds } from '../system-programs.ts';

const machine = (programs: string[], files: string[], chromePath?: string): Machine => ({
  hasProgram: (name) => programs.includes(name),
  hasFile: (path) => files.includes(path),
  chromePath,
});
const all = ['mosquitto', 'mosquitto_passwd', 'socat'];
const packages = (tried: Machine) => missingNeeds(tried).map(({ debianPackage }) => debianPackage);

describe('system programs for the tests', () => {
  it('a bare machine lacks all', () => {
    expect(packages(machine([], []))).toEqual(['mosquitto', 'socat', 'libnss3']);
  });
  it.each([
    { browser: "the system's", files: ['/usr/bin/chromium'], chromePath: undefined },
    { browser: 'the one that is named', files: ['/opt/chrome'], chromePath: '/opt/chrome' },
    { browser: 'the packaged one', files: ['/usr/lib/x86_64-linux-gnu/libnss3.so'], chromePath: undefined },
  ])('lacks nothing with $browser browser', ({ files, chromePath }) => {
    expect(packages(machine(all, files, chromePath))).toEqual([]);
  });
  it('a browser that is named but not there counts for nothing', () => {
    expect(packages(machine(all, [], '/opt/chrome'))).toEqual(['libnss3']);
  });
  it('a broker without its password tool does not do', () => {
    expect(packages(machine(['mosquitto', 'socat'], ['/usr/bin/chromium']))).toEqual(['mosquitto']);
  });
});
