import { launchBrowser } from '../support/browser.ts';
import { startNode } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { connectSteadyDevice } from '../support/steady-device.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { sleep } from '../support/wait.ts';
import { report } from './figure.ts';

/** Live left open at one message a second: tasks that hold up the page, and memory that does not come back. */
export async function benchWatching({ minutes }: { minutes: number }): Promise<void> {
  const folder = temporaryFolder('bench');
  const siteFile = writeSite(folder.file('site.yaml'), demoContent({ control: { stepS: 1 } }));
  const controller = startNode('controller/main.mjs', ['--site', siteFile, '--data', folder.path]);
  const broker = (await controller.line(/^controller ready: broker (\S+)/))[1] ?? '';
  const where = ['--broker', broker, '--data', folder.path, '--port', '0'];
  const monitor = startNode('desktop/web/main.ts', where);
  const url = (await monitor.line(/^monitor: (\S+)/))[1] ?? '';
  const device = await connectSteadyDevice(broker, 'quillhaven-wash-house');
  const browser = await launchBrowser();
  let said = 0;
  const talk = setInterval(() => device.say({ storeTopC: 40 + (said++ % 40) / 4 }), 1000);
  try {
    const page = await (await browser.newContext()).newPage();
    await page.goto(url);
    await page.waitForSelector('[data-channel="storeTopC"]');
    await sleep(10_000);
    const client = await page.context().newCDPSession(page);
    const heapMb = async () => {
      await client.send('HeapProfiler.collectGarbage');
      return (await page.evaluate<number>('performance.memory.usedJSHeapSize')) / 1e6;
    };
    const beforeMb = await heapMb();
    await page.evaluate(watchLongTasks);
    await sleep(minutes * 60_000);
    const longestMs = await page.evaluate<number>('Math.max(0, ...longTasksMs)');
    report({
      bench: 'watching',
      figure: `longest task of the page over 50 ms in ${minutes} min at 1 Hz; 0: none`,
      value: longestMs,
      unit: 'ms',
      atMost: 0,
    });
    report({
      bench: 'watching',
      figure: `heap of the page grown in ${minutes} min at 1 Hz`,
      value: (await heapMb()) - beforeMb,
      unit: 'MB',
      atMost: 2,
    });
  } finally {
    clearInterval(talk);
    await browser.close();
    await device.close();
    await monitor.stop();
    await controller.stop();
    folder.remove();
  }
}

/** Runs in the page: the browser itself reports each task of more than 50 ms. */
const watchLongTasks = `
  globalThis.longTasksMs = [];
  new PerformanceObserver((list) => longTasksMs.push(...list.getEntries().map(({ duration }) => duration)))
    .observe({ type: 'longtask' });
`;
