import { writeFileSync } from 'node:fs';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { logPath } from '../../controller/log/log.ts';
import { openLogWriter } from '../../controller/log/writer.ts';
import { createHost, type MonitorHost } from '../../desktop/host/host.ts';
import { pageFolder } from '../../desktop/web/run.ts';
import { serveMonitor, type WebServer } from '../../desktop/web/server.ts';
import { defaultSettings, settingsSchema } from '../../shared-types/settings.ts';
import { expectAccessible } from '../support/accessible.ts';
import { launchBrowser } from '../support/browser.ts';
import { tabTo } from '../support/keyboard.ts';
import { logRecord } from '../support/log-records.ts';
import { demoContent, siteOf } from '../support/sites.ts';
import { temporaryFolder } from '../support/temporary.ts';

const folder = temporaryFolder('foreign-days');
const site = siteOf(demoContent({ timeZone: 'Europe/Lisbon' }));
let browser: Browser;
let host: MonitorHost;
let server: WebServer;

/** A monitor without a broker, beside the log of a loop whose controller ran here once. */
beforeAll(async () => {
  const writer = openLogWriter(logPath(folder.path, site.name));
  const run = writer.startRun('engine 1', 0);
  writer.keepSite(site, 0);
  writer.keepSettings(settingsSchema.parse({ ...defaultSettings, ...site.settings }), 0);
  writer.append(logRecord(1, { run }));
  writer.close();
  host = createHost({ brokerUrl: 'mqtt://127.0.0.1:9', dataFolder: folder.path });
  const start = await serveMonitor({ api: host, pageFolder, host: '127.0.0.1', port: 0 });
  if (!start.ok) throw new Error(start.reason);
  server = start.server;
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
  await Promise.all([server?.close(), host?.close()]);
  folder.remove();
});

/** A morning of a logger that writes semicolons, decimal commas and the day first; with a hostile cell. */
const rows = Array.from({ length: 120 }, (_, minute) => {
  const clock = `${8 + Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;
  return `4.6.2031 ${clock};${30 + Math.floor(minute / 4)},5;28,0;${minute < 10 ? 0 : 1};6,0`;
});
const file = folder.file('attic.csv');
writeFileSync(
  file,
  [
    'Zeit;Dach °C;Unten °C;Pumpe;Fluss',
    ...rows,
    '4.6.2031 10:01;<img src=x onerror=alert(1)>;28,0;1;6,0',
    rows[0],
    '',
  ].join('\r\n'),
);

async function open(hash: string, options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({
    ...{ viewport: { width: 1280, height: 900 }, locale: 'en-GB' },
    ...options,
  });
  onTestFinished(() => context.close());
  const page = await context.newPage();
  await page.goto(`${server.url}${hash}`);
  return page;
}

const days = `#/days?site=${site.name}`;

/** Opens the card and says of each column what it is. */
async function sayColumns(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Take in days of another logger' }).click();
  await page.getByLabel('CSV file').setInputFiles(file);
  await page.getByLabel('What Zeit is').selectOption('time');
  await page.getByLabel('What Dach °C is').selectOption('panOutletC');
  await page.getByLabel('What Unten °C is').selectOption('storeBottomC');
  await page.getByLabel('What Pumpe is').selectOption('pump');
  await page.getByLabel('What Fluss is').selectOption('flowLMin');
  await page.getByLabel('Format of the times').selectOption('day-month-year');
  await page.getByLabel('Zone of times that name none').selectOption('Europe/Lisbon');
}

describe('days of another logger', () => {
  test('are looked at, taken in and opened; the same file again brings nothing', async () => {
    const page = await open(days);
    await sayColumns(page);
    await page.getByText('Day and month could also be the other way round.', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Show what is understood' }).click();
    await page.getByText('121 of 122 rows are understood.').waitFor();
    await page.getByText('1 × no number').waitFor();
    await page.getByRole('cell', { name: '<img src=x onerror=alert(1)>' }).waitFor();
    await page.getByText('4 June 2031', { exact: false }).first().waitFor();
    await page.getByRole('button', { name: 'Take the days in' }).click();
    await page.getByText('Taken in: 1 day, 121 steps.', { exact: false }).waitFor();

    await page.getByRole('button', { name: 'Show what is understood' }).click();
    await page.getByText('Nothing of it is new.').waitFor();
    await page.getByRole('button', { name: 'Take the days in' }).click();
    await page.getByText('Nothing of the file is new', { exact: false }).waitFor();

    await page.getByRole('link', { name: 'Look at these days' }).click();
    const day = page.getByRole('link', { name: /4 June 2031.*kWh home.*other logger/ });
    await day.click();
    await page.getByText('in which phases the loop was is not known', { exact: false }).waitFor();
    await page.getByRole('link', { name: 'Live' }).click();
    await page.getByText('Nothing runs under its name', { exact: false }).waitFor();
  });

  test('give axe nothing to find, light and dark, and fit 360 px', async () => {
    const page = await open(days, { colorScheme: 'light' });
    await sayColumns(page);
    await page.getByRole('button', { name: 'Show what is understood' }).click();
    await page.getByText('1 × no number').waitFor();
    await expectAccessible(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAccessible(page);
    await page.setViewportSize({ width: 360, height: 780 });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
  });

  test('are taken in by the keyboard alone, by columns that were kept', async () => {
    const kept = await open(days);
    await sayColumns(kept);
    await kept.getByLabel('Name for these columns').fill('Attic');
    await kept.getByRole('button', { name: 'Keep these columns' }).click();
    await kept.getByText('Kept as Attic.').waitFor();

    const page = await open(days);
    await tabTo(page, 'Take in days of another logger');
    await page.keyboard.press('Enter');
    await page.getByLabel('CSV file').setInputFiles(file);
    await page.getByLabel('Columns as kept under').waitFor();
    await tabTo(page, 'Columns as kept under');
    await page.keyboard.press('ArrowDown');
    await tabTo(page, 'Show what is understood');
    await page.keyboard.press('Enter');
    await page.getByText('121 of 122 rows are understood.').waitFor();
    await tabTo(page, 'Take the days in');
    await page.keyboard.press('Enter');
    await page.getByText(/Taken in: 1 day|Nothing of the file is new/).waitFor();
  });
});
