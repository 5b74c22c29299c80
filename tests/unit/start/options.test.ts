import { describe, expect, it, vi } from 'vitest';
import { readStartOptions } from '../../../desktop/start/options.ts';

const read = (...args: string[]) => readStartOptions(['node', 'start.ts', ...args]);

const nothing = { scenario: undefined, from: undefined };

describe('readStartOptions', () => {
  it('has defaults', () => {
    expect(read()).toEqual({ window: true, port: 8080, speed: 60, data: 'data', ...nothing });
  });

  it('takes what it is given', () => {
    const given =
      '--no-window --port 0 --speed 1.5 --data there --scenario one.yaml --from 2031-01-02T03:04:05Z';
    expect(read(...given.split(' '))).toEqual({
      window: false,
      port: 0,
      speed: 1.5,
      data: 'there',
      scenario: 'one.yaml',
      from: Date.UTC(2031, 0, 2, 3, 4, 5),
    });
  });

  it.each([
    ['--port', '65536'],
    ['--port', '-1'],
    ['--port', '80x'],
    ['--speed', '0'],
    ['--speed', '1e9'],
    ['--speed', 'fast'],
    ['--from', 'yesterday'],
    ['--sped', '60'],
  ])('refuses %s %s with words and a code', (name, value) => {
    const exit = vi.spyOn(process, 'exit').mockImplementation((code) => {
      throw new Error(`exit ${code}`);
    });
    const words = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    try {
      expect(() => read(name, value)).toThrow('exit 2');
      expect(words.mock.calls.join()).toContain(name);
    } finally {
      exit.mockRestore();
      words.mockRestore();
    }
  });
});
