import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { DaySummary } from '../../shared-types/log.ts';
import { expectAccessible } from '../support/accessible.ts';
import { testDays } from '../support/fake-monitor/history.ts';
import { fakePages } from '../support/fake-pages.ts';
import { until } from '../support/wait.ts';

const pages = fakePages();
const { open } = pages;

const focusedDay = (page: Page) => page.evaluate('document.activeElement.dataset.day');

/** A whole year of made-up days after the pattern of the test's own. */
const wholeYear: readonly DaySummary[] = Array.from({ length: 365 }, (_, index) => ({
  ...(testDays[index % testDays.length] as DaySummary),
  day: new Date(Date.UTC(2030, 0, 1 + index)).toISOString().slice(0, 10),
}));

describe('the year', () => {
  test.each(['light', 'dark'] as const)(
    'of 365 days has nothing for axe to find, %s',
    async (colorScheme) => {
      pages.monitor.showDays(wholeYear);
      const page = await open('#/days', { colorScheme });
      await page.getByRole('heading', { name: 'December 2030' }).waitFor();
      expect(await page.locator('a[data-day]').count()).toBe(365);
      await expectAccessible(page);
    },
  );

  test('of 365 days fits 360 px', async () => {
    pages.monitor.showDays(wholeYear);
    const page = await open('#/days', { viewport: { width: 360, height: 780 } });
    // A phone begins with the month.
    await page.getByRole('region', { name: 'December 2030' }).waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    await page.getByText('Year', { exact: true }).click();
    await page.getByRole('heading', { name: 'December 2030' }).waitFor();
    expect(await page.locator('a[data-day]').count()).toBe(365);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
  });

  test('is walked by arrow keys, each day told in words, and opened with Enter', async () => {
    const page = await open('#/days');
    await page.locator('a[data-day="2031-06-21"]').focus();
    await page.keyboard.press('ArrowLeft');
    expect(await focusedDay(page)).toBe('2031-06-20');
    await page.getByText(/^Friday.* 20 June 2031: 17\.2\skWh home, 4\sstarts, 2\sfills$/).waitFor();
    await page.keyboard.press('ArrowUp');
    expect(await focusedDay(page)).toBe('2031-06-13');
    expect(await page.locator('a[data-day][tabindex="0"]').count()).toBe(1);
    await page.keyboard.press('Enter');
    await page.getByText('What happened').first().waitFor();
    expect(new URL(page.url()).hash).toBe('#/days/2031-06-13');
  });

  test('leads to its best day', async () => {
    const page = await open('#/days');
    await page.getByRole('link', { name: /^Best day/ }).click();
    await page.getByText('What happened').first().waitFor();
  });

  test('says alarms and gaps in words as well as by their marks', async () => {
    const page = await open('#/days');
    await page
      .getByRole('link', { name: /2 alarms/ })
      .first()
      .waitFor();
    expect(
      await page
        .getByRole('link', { name: /71 % logged/ })
        .first()
        .textContent(),
    ).toContain('○');
    expect(
      await page
        .getByRole('link', { name: /2 alarms/ })
        .first()
        .textContent(),
    ).toContain('▲');
  });

  test('keeps the way to look at it', async () => {
    const page = await open('#/days');
    await page.getByText('List', { exact: true }).click();
    await page.getByRole('columnheader', { name: 'Pump energy' }).waitFor();
    await page.reload();
    await page.getByRole('columnheader', { name: 'Pump energy' }).waitFor();
  });

  test('of a log with nothing says so', async () => {
    pages.monitor.showDays([]);
    const page = await open('#/days');
    await page.getByText('No day was logged yet.').waitFor();
  });
});

describe('a day', () => {
  test('tells all values at an instant that keys move, and those under the pointer', async () => {
    const page = await open('#/days/2031-06-20');
    const slider = page.getByRole('slider', { name: 'Instant under the cursor' });
    await slider.focus();
    const before = await slider.getAttribute('aria-valuetext');
    await page.keyboard.press('ArrowRight');
    expect(await slider.getAttribute('aria-valuetext')).not.toBe(before);
    const canvas = page.getByRole('img', { name: /^Curves, / });
    const box = await canvas.boundingBox();
    if (box === null) throw new Error('no chart');
    await page.mouse.move(box.x + box.width * 0.75, box.y + 100);
    await until('the instant under the pointer', async () =>
      /^1[67]:/.test((await slider.getAttribute('aria-valuetext')) ?? ''),
    );
  });

  test('leads to its neighbours with Shift and an arrow key', async () => {
    const page = await open('#/days/2031-06-20');
    await page.getByRole('link', { name: 'Day before' }).waitFor();
    await page.keyboard.press('Shift+ArrowLeft');
    await page
      .getByRole('heading', { name: /19 June 2031/ })
      .first()
      .waitFor();
    expect(new URL(page.url()).hash).toBe('#/days/2031-06-19');
  });

  test('is saved as a table and as a picture under plain names', async () => {
    const page = await open('#/days/2031-06-20');
    const saved = async (button: string) => {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: button }).click();
      const file = await download;
      return { name: file.suggestedFilename(), content: readFileSync(await file.path()) };
    };
    const table = await saved('Day as CSV');
    expect(table.name).toBe('test-loop-2031-06-20.csv');
    expect(table.content.toString()).toMatch(
      /^Time \(UTC\),Zone,Pan outlet \[°C\],.*\r\n2031-06-21T00:00:00\.000Z,/,
    );
    await page.getByText('Saved as test-loop-2031-06-20.csv.').waitFor();
    const picture = await saved('Curves as a picture');
    expect(picture.name).toBe('test-loop-2031-06-20.png');
    expect(picture.content.subarray(1, 4).toString()).toBe('PNG');
  });

  test('prints as one page with its curves, and nothing else of the screen', async () => {
    const page = await open('#/days/2031-06-20', { colorScheme: 'dark' });
    await page.getByRole('img', { name: /^Curves, / }).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button', { name: 'Print or save as PDF' }).isVisible()).toBe(false);
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    expect(await page.evaluate(inkOfReport)).toBeGreaterThan(2000);
  });
});

/** Runs in the page: how many pixels of the report's curves are drawn. */
const inkOfReport = `(() => {
  const canvas = document.querySelector('[data-report] canvas');
  const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
  let drawn = 0;
  for (let at = 3; at < data.length; at += 4) if (data[at] > 0) drawn++;
  return drawn;
})()`;
