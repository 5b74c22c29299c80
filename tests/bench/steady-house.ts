import type { Browser } from 'playwright-core';
import { launchBrowser } from '../support/browser.ts';
import { startNode } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { connectSteadyDevice, type SteadyDevice } from '../support/steady-device.ts';
import { temporaryFolder } from '../support/temporary.ts';

interface SteadyHouse {
  readonly browser: Browser;
  /** Address of the monitor. */
  readonly url: string;
  readonly device: SteadyDevice;
}

/** Runs `measure` beside a controller at one step a second, a device that says what it is told, and a monitor. */
export async function withSteadyHouse(measure: (house: SteadyHouse) => Promise<void>): Promise<void> {
  const folder = temporaryFolder('bench');
  const siteFile = writeSite(folder.file('site.yaml'), demoContent({ control: { stepS: 1 } }));
  const controller = startNode('controller/main.mjs', ['--site', siteFile, '--data', folder.path]);
  const broker = (await controller.line(/^controller ready: broker (\S+)/))[1] ?? '';
  const where = ['--broker', broker, '--data', folder.path, '--port', '0'];
  const monitor = startNode('desktop/web/main.ts', where);
  const url = (await monitor.line(/^monitor: (\S+)/))[1] ?? '';
  const device = await connectSteadyDevice(broker, 'quillhaven-wash-house');
  const browser = await launchBrowser();
  try {
    await measure({ browser, url, device });
  } finally {
    await browser.close();
    await device.close();
    await monitor.stop();
    await controller.stop();
    folder.remove();
  }
}
