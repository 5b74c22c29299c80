import type { Page } from 'playwright-core';
import { sleep } from '../support/wait.ts';
import { report } from './figure.ts';
import { withSteadyHouse } from './steady-house.ts';

/** Live left open at one message a second: tasks that hold up the page, and memory that does not come back. */
export async function benchWatching({ minutes }: { minutes: number }): Promise<void> {
  await withSteadyHouse(async ({ browser, url, device }) => {
    let said = 0;
    const talk = setInterval(() => device.say({ storeTopC: 40 + (said++ % 40) / 4 }), 1000);
    try {
      const page = await (await browser.newContext()).newPage();
      await page.goto(url);
      await page.waitForSelector('[data-channel="storeTopC"]');
      await watch(page, minutes);
    } finally {
      clearInterval(talk);
    }
  });
}

async function watch(page: Page, minutes: number): Promise<void> {
  const client = await page.context().newCDPSession(page);
  const heapMb = async () => {
    await client.send('HeapProfiler.collectGarbage');
    return (await page.evaluate<number>('performance.memory.usedJSHeapSize')) / 1e6;
  };
  // What is loaded once the page stands is no growth.
  await sleep(10_000);
  const beforeMb = await heapMb();
  await page.evaluate(watchLongTasks);
  await sleep(minutes * 60_000);
  report({
    bench: 'watching',
    figure: `longest task of the page over 50 ms in ${minutes} min at 1 Hz; 0: none`,
    value: await page.evaluate<number>('Math.max(0, ...longTasksMs)'),
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
}

/** Runs in the page: the browser itself reports each task of more than 50 ms. */
const watchLongTasks = `
  globalThis.longTasksMs = [];
  new PerformanceObserver((list) => longTasksMs.push(...list.getEntries().map(({ duration }) => duration)))
    .observe({ type: 'longtask' });
`;
