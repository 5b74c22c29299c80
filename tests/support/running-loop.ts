import { type ClockAnchor, formatAnchor } from '../../controller/clock.ts';
import { type Program, startNode } from './process.ts';

/** A clear noon in summer at the demo's place, where a loop fills and circulates within the hour. */
export const clearNoonMs = Date.UTC(2031, 5, 21, 13);

/** Controller and device that live by the same clock, each a process of its own. */
export interface LoopFlags {
  readonly siteFile: string;
  readonly dataFolder: string;
  readonly clock: ClockAnchor;
  /** Flags that lead the device to its broker or port. */
  readonly device: readonly string[];
}

/** A clock that shows `showsMs` now and runs `speed` times as fast as the wall's. */
export function clockFrom(showsMs: number, speed: number): ClockAnchor {
  return { showsMs, atWallMs: Date.now(), speed };
}

export async function startController(flags: LoopFlags): Promise<Program> {
  const program = startNode('controller/main.mjs', [
    ...['--site', flags.siteFile, '--data', flags.dataFolder],
    ...['--clock', formatAnchor(flags.clock)],
  ]);
  await program.line(/^controller ready: /);
  return program;
}

export async function startDevice(flags: LoopFlags): Promise<Program> {
  const program = startNode('sim/device/main.ts', [
    ...['--site', flags.siteFile, '--clock', formatAnchor(flags.clock)],
    ...['--weather', 'clear', '--seed', '7', ...flags.device],
  ]);
  await program.line(/^device ready$/);
  return program;
}
