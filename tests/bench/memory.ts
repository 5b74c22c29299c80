import { readFileSync } from 'node:fs';
import { startNode, startProgram } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { sleep } from '../support/wait.ts';
import { report } from './figure.ts';

/** Resident memory of the controller process, at one step a second beside a simulated device. */
export async function benchMemory({ minutes }: { minutes: number }): Promise<void> {
  const folder = temporaryFolder('bench');
  const siteFile = writeSite(folder.file('site.yaml'), demoContent({ control: { stepS: 1 } }));
  // As `npm run controller` runs it.
  const controller = startProgram(process.execPath, [
    '--max-semi-space-size=2',
    'controller/main.mjs',
    ...['--site', siteFile, '--data', folder.path],
  ]);
  try {
    const ready = await controller.line(/^controller ready: broker (\S+)/);
    const device = startNode('sim/device/main.ts', ['--site', siteFile, '--broker', ready[1] ?? '']);
    try {
      await device.line(/^device ready/);
      await sleep(minutes * 60_000);
      const value = residentMb(controller.pid);
      report({
        bench: 'memory',
        figure: `controller after ${minutes} min at 1 Hz`,
        value,
        unit: 'MB',
        atMost: 120,
      });
    } finally {
      await device.stop();
    }
  } finally {
    await controller.stop();
    folder.remove();
  }
}

/** Resident set of a process on Linux [MB]. */
function residentMb(pid: number): number {
  const kilobytes = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Number(kilobytes) / 1024;
}
