import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { expectAccessible } from '../support/accessible.ts';
import { testDays } from '../support/fake-monitor/history.ts';
import { fakePages } from '../support/fake-pages.ts';
import { tabTo } from '../support/keyboard.ts';

const pages = fakePages();

async function looked(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look', exact: true }).click();
  await page.getByRole('heading', { name: 'Gathers less' }).waitFor();
}

test.each([
  ['light', 1280],
  ['dark', 360],
] as const)(
  'a check has nothing for axe to find in the %s scheme, and fits %d px with every table open',
  async (colorScheme, width) => {
    // A row of a day is like another: axe looks at each element of each.
    pages.monitor.showDays(testDays.slice(-12));
    const page = await pages.open('#/pan-check', { colorScheme, viewport: { width, height: 780 } });
    await page.getByText('Other days').click();
    await page.getByLabel('Compare with: First day').waitFor();
    await looked(page);
    await page.getByText('Every day of use').click();
    await page.getByRole('rowheader', { name: /20 June 2031/ }).waitFor();
    await expectAccessible(page);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
  },
);

test('a check is begun by keyboard, tells how far it is, is given up, and says when it is of other days', async () => {
  pages.monitor.holdJobs({ doneFraction: 0.43, doing: 'checking' });
  const page = await pages.open('#/replay');
  await tabTo(page, 'Pan check');
  await page.keyboard.press('Enter');
  await page.getByText('41 days, compared with the oldest of them.').waitFor();
  expect(await page.title()).toBe('Pan check · Test loop · flatwater');
  await tabTo(page, 'Look');
  await page.keyboard.press('Enter');
  await page.getByText('Looking at the pan: 43 % done.').waitFor();
  await tabTo(page, 'Give up');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByText('Looking at the pan').count()).toBe(0);

  pages.monitor.reset();
  await looked(page);
  await page.getByRole('img', { name: 'Heat against the reference on 41 days' }).waitFor();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Groups as CSV' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('test-loop-2031-05-10-2031-06-20-pan-groups.csv');
  expect(readFileSync(await file.path(), 'utf8')).toContain('\r\n2031-05-10,2031-05-18,9,');

  const old = page.getByText('This is the answer for other days than those chosen now.');
  expect(await old.count()).toBe(0);
  await page.getByLabel('Days to look at: First day').fill('2031-06-01');
  await old.waitFor();
  await page.getByLabel('Days to look at: Last day').fill('2031-05-31');
  await page.getByText('The first day lies after the last.').waitFor();
  expect(await page.getByRole('button', { name: 'Look', exact: true }).isDisabled()).toBe(true);
});
