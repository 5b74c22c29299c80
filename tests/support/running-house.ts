import type { Browser, Page } from 'playwright-core';
import { launchBrowser } from './browser.ts';
import { type Program, startNode } from './process.ts';
import { demoContent, writeSite } from './sites.ts';
import { temporaryFolder } from './temporary.ts';

interface HouseOptions {
  /** What the demo's site file says otherwise. */
  readonly changes: Parameters<typeof demoContent>[0];
  /** Instant that the clock shows at first, and how fast it runs. */
  readonly from: string;
  readonly speed: number;
  readonly viewport: { readonly width: number; readonly height: number };
  /** What the log holds before the controller begins: told the data folder. */
  readonly before?: (dataFolder: string) => void;
  /** Told the broker's address once controller and device are up. */
  readonly onBroker?: (url: string) => Promise<void>;
}

/** Controller, simulated device and monitor as processes of their own, and a page that shows them. */
export interface House {
  readonly page: Page;
  stop(): Promise<void>;
}

/** Starts a house and opens its page at `hash`; whoever started it stops it. */
export async function startHouse(hash: string, options: HouseOptions): Promise<House> {
  const data = temporaryFolder('house');
  const site = writeSite(data.file('site.yaml'), demoContent(options.changes));
  options.before?.(data.path);
  const programs: Program[] = [];
  let browser: Browser | undefined;
  const start = (...[file, args]: Parameters<typeof startNode>): Program => {
    const program = startNode(file, args);
    programs.unshift(program);
    return program;
  };
  const stop = async () => {
    await browser?.close();
    for (const program of programs) await program.stop();
    data.remove();
  };
  try {
    const clock = `${Date.parse(options.from)}@${Date.now()}*${options.speed}`;
    const controller = start('controller/main.mjs', ['--site', site, '--data', data.path, '--clock', clock]);
    const broker = (await controller.line(/^controller ready: broker (\S+)/))[1] ?? '';
    const device = start('sim/device/main.ts', ['--site', site, '--broker', broker, '--clock', clock]);
    await device.line(/^device ready/);
    await options.onBroker?.(broker);
    const monitor = start('desktop/web/main.ts', ['--broker', broker, '--data', data.path, '--port', '0']);
    const url = (await monitor.line(/^monitor: (\S+)/))[1] ?? '';
    browser = await launchBrowser();
    const context = await browser.newContext({ locale: 'en-GB', viewport: options.viewport });
    const page = await context.newPage();
    await page.goto(`${url}${hash}`);
    return { page, stop };
  } catch (thrown) {
    await stop();
    throw thrown;
  }
}
