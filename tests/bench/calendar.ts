import type { Browser } from 'playwright-core';
import { localDaysOf } from '../../controller/log/local-day.ts';
import { logPath } from '../../controller/log/log.ts';
import { openLogWriter } from '../../controller/log/writer.ts';
import { launchBrowser } from '../support/browser.ts';
import { testSite, testSiteMessage } from '../support/fake-monitor/site.ts';
import { logRecord } from '../support/log-records.ts';
import { startNode } from '../support/process.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { median, report } from './figure.ts';

const rounds = 7;
const stepMs = 10_000;
const dayMs = 86_400_000;
const firstMs = Date.UTC(2030, 0, 1, 12);

/** What somebody waits for who opens the calendar of a year that was logged every ten seconds. */
export async function benchCalendar({ quick = false }: { readonly quick?: boolean }): Promise<void> {
  const days = quick ? 30 : 365;
  const folder = temporaryFolder('calendar');
  fillLog(logPath(folder.path, testSite), days);
  // Nobody answers at that address: what was logged stays readable, and nothing else happens meanwhile.
  const nobody = ['--broker', 'mqtt://127.0.0.1:1', '--data', folder.path, '--port', '0'];
  const monitor = startNode('desktop/web/main.ts', nobody);
  const browser = await launchBrowser();
  try {
    const url = (await monitor.line(/^monitor: (\S+)/))[1] ?? '';
    const times: number[] = [];
    for (let round = 0; round < rounds; round++) times.push(await drawnMs(browser, url, days));
    report({
      bench: 'calendar',
      figure: `from the open log to the calendar of ${days} days at 10 s`,
      value: median(times),
      unit: 'ms',
      atMost: 300,
    });
  } finally {
    await browser.close();
    await monitor.stop();
    folder.remove();
  }
}

function fillLog(path: string, days: number): void {
  const { site } = testSiteMessage();
  const { dayOf } = localDaysOf('UTC');
  const log = openLogWriter(path);
  log.keepSite({ ...site, timeZone: 'Etc/UTC' }, firstMs);
  const run = log.startRun('bench', firstMs);
  for (let day = 0; day < days; day++) {
    const localDay = dayOf(firstMs + day * dayMs);
    const beginMs = Date.parse(`${localDay}T00:00:00Z`);
    log.batch(() => {
      for (let atMs = beginMs; atMs < beginMs + dayMs; atMs += stepMs) {
        const step = 1 + (day * dayMs + atMs - beginMs) / stepMs;
        const total = { ...logRecord(step).outcome.total, heatHomeJ: step * 1e4 };
        log.append(logRecord(step, { run, input: { nowMs: atMs, localDay }, outcome: { total } }));
      }
    });
  }
  if (!log.writable) throw new Error(`the log was not written: ${log.remark}`);
  log.close();
}

/** From the address of the calendar to the frame that shows its last day, on a page that asked the log before. */
async function drawnMs(browser: Browser, url: string, days: number): Promise<number> {
  const context = await browser.newContext({ locale: 'en-GB' });
  const page = await context.newPage();
  await page.goto(`${url}#/alarms?site=${testSite}`);
  await page.locator('main h2').first().waitFor();
  const taken = await page.evaluate<number>(calendarMs(days));
  await context.close();
  return taken;
}

/** Runs in the page, and so is text. */
const calendarMs = (days: number) => `new Promise((resolve) => {
  const startMs = performance.now();
  const look = () => {
    if (document.querySelectorAll('a[data-day]').length < ${days}) return requestAnimationFrame(look);
    requestAnimationFrame(() => resolve(performance.now() - startMs));
  };
  location.hash = '#/days?site=${testSite}';
  look();
})`;
