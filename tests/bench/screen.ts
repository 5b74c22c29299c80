import type { Browser, Page } from 'playwright-core';
import type { SteadyDevice } from '../support/steady-device.ts';
import { sleep } from '../support/wait.ts';
import { median, report } from './figure.ts';
import { withSteadyHouse } from './steady-house.ts';

const paints = 7;
const messages = 40;

/** What an owner waits for: the first useful sight of Live, and a new value on it. */
export async function benchScreen(): Promise<void> {
  await withSteadyHouse(async ({ browser, url, device }) => {
    const talk = setInterval(() => device.say(), 1000);
    try {
      await sleep(5000);
      report({
        bench: 'screen',
        figure: 'first useful paint of Live after the server answers',
        value: await firstPaintMs(browser, url),
        unit: 'ms',
        atMost: 1000,
      });
    } finally {
      clearInterval(talk);
    }
    report({
      bench: 'screen',
      figure: 'device to screen at 1 Hz, median',
      value: await latencyMs(browser, url, device),
      unit: 'ms',
      atMost: 150,
    });
  });
}

/** From the first byte of the page to the frame that shows the first reading, in browsers without a cache. */
async function firstPaintMs(browser: Browser, url: string): Promise<number> {
  const times: number[] = [];
  for (let count = 0; count < paints; count++) {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(url, { waitUntil: 'commit' });
    times.push(await page.evaluate<number>(firstReadingMs));
    await context.close();
  }
  return median(times);
}

/** Runs in the page, and so is text: waits for the first reading, then for the frame that shows it. */
const firstReadingMs = `new Promise((resolve) => {
  const look = () => {
    if (document.querySelector('[data-channel="storeBottomC"]') === null) return requestAnimationFrame(look);
    const [navigation] = performance.getEntriesByType('navigation');
    requestAnimationFrame(() => resolve(performance.now() - navigation.responseStart));
  };
  look();
})`;

/**
 * From sending a message to the change on the screen that it brings about. The engine takes the median
 * of three samples, so message k shows the value of message k - 1 of a ramp: what is measured is the way
 * of message k.
 */
async function latencyMs(browser: Browser, url: string, device: SteadyDevice): Promise<number> {
  const page = await (await browser.newContext({ locale: 'en-GB' })).newPage();
  await page.goto(url);
  await page.waitForSelector('[data-channel="storeTopC"]');
  await page.evaluate(watchStoreTop);
  const sentMs = new Map<string, number>();
  for (let index = 0; index < messages; index++) {
    const storeTopC = 40 + index / 2;
    device.say({ storeTopC });
    sentMs.set((storeTopC - 0.5).toFixed(1), Date.now());
    await sleep(1000);
  }
  return median(latencies(await seenOn(page), sentMs));
}

interface Seen {
  readonly text: string;
  readonly atMs: number;
}

/** Runs in the page: notes every text that the store's top shows, and when. */
const watchStoreTop = `
  globalThis.seen = [];
  new MutationObserver(() => {
    const text = document.querySelector('[data-channel="storeTopC"] dd')?.textContent ?? '';
    if (seen.at(-1)?.text !== text) seen.push({ text, atMs: Date.now() });
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
`;

const seenOn = (page: Page) => page.evaluate<Seen[]>('seen');

function latencies(seen: readonly Seen[], sentMs: ReadonlyMap<string, number>): number[] {
  const found: number[] = [];
  for (const { text, atMs } of seen) {
    const sent = sentMs.get(/\d+\.\d/.exec(text)?.[0] ?? '');
    if (sent !== undefined) found.push(atMs - sent);
  }
  if (found.length < messages / 2) throw new Error(`only ${found.length} of ${messages} values were seen`);
  return found;
}
