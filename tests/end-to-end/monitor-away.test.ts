import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { startFakeMonitor } from '../support/fake-monitor/fake-monitor.ts';
import { until } from '../support/wait.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

describe('a monitor that is away for a while', () => {
  test('is said, and found again when it is back', async () => {
    const gone = await startFakeMonitor(inject('pageFolder'));
    const port = Number(new URL(gone.url).port);
    const page = await browser.newPage();
    await page.goto(`${gone.url}#/live`);
    await page.getByText('Circulating').first().waitFor();
    await gone.close();
    await page.getByText('The monitor does not answer.').waitFor();
    expect(await page.getByRole('button', { name: 'Empty the pan' }).isDisabled()).toBe(true);
    const back = await startFakeMonitor(inject('pageFolder'), port);
    await page.getByText('The monitor does not answer.').waitFor({ state: 'detached' });
    await until('requests to be possible again', () =>
      page.getByRole('button', { name: 'Empty the pan' }).isEnabled(),
    );
    await page.close();
    await back.close();
  });

  test('a chart that could not be fetched while the monitor was away is fetched once it is back', async () => {
    const gone = await startFakeMonitor(inject('pageFolder'));
    const port = Number(new URL(gone.url).port);
    const page = await browser.newPage();
    let away = true;
    await page.route(/time-chart-.*\.js$/, (route) => (away ? route.abort() : route.continue()));
    const missed = page.waitForEvent('requestfailed');
    await page.goto(`${gone.url}#/live`);
    expect((await missed).url()).toContain('time-chart');
    await page.getByRole('button', { name: 'Empty the pan' }).waitFor();
    await gone.close();
    away = false;
    const back = await startFakeMonitor(inject('pageFolder'), port);
    await page.locator('canvas').first().waitFor();
    expect(await page.getByRole('button', { name: 'Empty the pan' }).isVisible()).toBe(true);
    await page.close();
    await back.close();
  });
});
