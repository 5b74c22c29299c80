import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { defaultSettings } from '../../shared-types/settings.ts';
import { expectAccessible } from '../support/accessible.ts';
import { testFit } from '../support/fake-monitor/tuning.ts';
import { fakePages } from '../support/fake-pages.ts';
import { focused, tabTo } from '../support/keyboard.ts';

const pages = fakePages();
const other = '#/replay/2031-06-20/other';
const many = '#/replay/2031-06-20/many';

/** Lives the day again with a changed setpoint, by pointer. */
async function lived(page: Page): Promise<void> {
  await page.getByRole('textbox', { name: 'Start difference', exact: true }).fill('2.5');
  await page.getByLabel('Work out the best possible').check();
  await page.getByRole('button', { name: 'Live this day again' }).click();
  await page.getByRole('heading', { name: 'Both sides through the day' }).waitFor();
}

async function swept(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Try them all' }).click();
  await page.getByRole('heading', { name: 'What more heat costs' }).waitFor();
}

const width = (page: Page) => page.evaluate('document.documentElement.scrollWidth');

describe('setpoints from trying to asking', () => {
  test('go by keyboard alone: tried over many days, looked into, and confirmed on Setpoints', async () => {
    const page = await pages.open(many);
    await page.getByRole('heading', { name: 'What to try' }).waitFor();
    await tabTo(page, 'Start difference: To');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('7');
    await page.getByText('5 combinations over 7 days.').waitFor();
    await tabTo(page, 'Try them all');
    await page.keyboard.press('Enter');
    await page.getByText('Advice', { exact: true }).waitFor();

    // Marks go from the fewest starts on.
    await tabTo(page, 'Start difference 5\u00a0K: 1.00\u00a0kWh less, pump starts 20');
    await page.keyboard.press('End');
    await page.keyboard.press('ArrowLeft');
    expect(await focused(page)).toBe('Start difference 2\u00a0K: 4.00\u00a0kWh more, pump starts 26');
    await page.keyboard.press('Enter');
    await tabTo(page, 'Look into one day');
    await page.keyboard.press('Enter');

    await page.getByRole('heading', { name: 'What to change' }).waitFor();
    await tabTo(page, 'Live this day again');
    await page.keyboard.press('Enter');
    await page.getByText('would have brought 1.10\u00a0kWh more heat home').first().waitFor();
    await tabTo(page, 'Review and apply on Setpoints …');
    await page.keyboard.press('Enter');

    await page.getByText('Start difference: 1\u00a0K → 2\u00a0K').waitFor();
    expect(pages.monitor.asked).toEqual([]);
    await tabTo(page, 'Apply 1 setpoint …');
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('Leave it as it is');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => pages.monitor.asked)
      .toEqual([{ kind: 'change-settings', settings: { startDifferenceK: 2 } }]);
  });
});

test.each(['light', 'dark'] as const)(
  'one and many setpoints have nothing for axe to find in the %s scheme',
  async (scheme) => {
    pages.monitor.keptFitIs(testFit(['2031-06-18', '2031-06-20']));
    const page = await pages.open(other, { colorScheme: scheme });
    await lived(page);
    await page.getByText('Fitted and held values').click();
    await expectAccessible(page);
    await page.getByRole('link', { name: 'Many setpoints' }).click();
    await swept(page);
    await expectAccessible(page);
  },
);

test('one and many setpoints fit 360 px, and the table does what the marks do', async () => {
  pages.monitor.keptFitIs(testFit(['2031-06-18', '2031-06-20']));
  const page = await pages.open(other, { viewport: { width: 360, height: 780 } });
  await lived(page);
  await page.getByText('Fitted and held values').click();
  await page.getByText('held: The wind hardly changed on these days.').waitFor();
  await page.getByText('Draw-off: worked out from the log').first().waitFor();
  await page.getByText('The pan would have been up to 58 °C').first().waitFor();
  await page.getByRole('img', { name: 'with its band: the most about 12:15, 700\u00a0W/m²' }).waitFor();
  await page
    .getByRole('region', { name: 'Light that the pan took up' })
    .getByText('The same as a table')
    .click();
  await page
    .getByRole('row', { name: '12:00 to 12:30 700\u00a0W/m² 560\u00a0W/m² to 840\u00a0W/m²' })
    .waitFor();
  expect(await width(page)).toBeLessThanOrEqual(360);
  await page.getByRole('link', { name: 'Many setpoints' }).click();
  await swept(page);
  await page.getByRole('radio', { name: 'Start difference 5\u00a0K' }).check();
  await page.getByRole('region', { name: 'Chosen' }).getByText('Start difference 5\u00a0K').waitFor();
  expect(await width(page)).toBeLessThanOrEqual(360);
});

test('a comparison has one cursor on both sides, is saved and printed, and says when it is of other values', async () => {
  const page = await pages.open(other);
  await lived(page);
  const slider = page.getByRole('slider', { name: 'Instant on both sides' });
  await slider.focus();
  const before = await slider.getAttribute('aria-valuetext');
  await page.keyboard.press('ArrowRight');
  expect(await slider.getAttribute('aria-valuetext')).not.toBe(before);

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Comparison as CSV' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('test-loop-2031-06-20-comparison.csv');
  expect(readFileSync(await file.path(), 'utf8')).toMatch(
    /^2031-06-20,Logged,.*\r\nNet heat home \[kWh\],25\.2,/,
  );

  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: 'Live this day again' }).isVisible()).toBe(false);
  await page.pdf({ format: 'A4' });
  expect(await page.evaluate(drawnReports)).toBe(2);
  await page.emulateMedia({ media: 'screen' });

  // A newer fit makes it an answer of the older one.
  expect(await page.getByText('before its newest fit').count()).toBe(0);
  await page.getByRole('button', { name: 'Fit the loop' }).click();
  await expect.poll(() => page.getByText('before its newest fit').count()).toBe(2);

  await page.getByRole('textbox', { name: 'Start difference', exact: true }).fill('3');
  await page.getByText('This is the answer for other values or another day').waitFor();
  const review = page.getByRole('link', { name: 'Review and apply on Setpoints …' });
  expect(await review.count()).toBe(0);
  await page.getByRole('button', { name: 'Start difference: leave as it is' }).click();
  await page.getByRole('button', { name: 'Live this day again' }).click();
  await page.getByText('These setpoints are in force already').waitFor();
  expect(await review.count()).toBe(0);
});

test('a sweep tells how far it is, can be given up, names a job of others, and says what is wrong with a range', async () => {
  pages.monitor.heavyJobIs({
    job: 'job-00000001',
    method: 'fit',
    progress: { doneFraction: 0.2, doing: 'fitting' },
  });
  pages.monitor.holdJobs({ doneFraction: 0.43, doing: 'sweeping' });
  const page = await pages.open(many);
  await page.getByText('busy with a fit of the loop for this site. Fitting the loop …').waitFor();
  await page.getByRole('button', { name: 'End that job' }).click();
  await expect.poll(() => page.getByText('busy with a fit').count()).toBe(0);
  await page.getByRole('button', { name: 'Try them all' }).click();
  await page.getByText('Trying setpoints: 43 % done.').waitFor();
  await page.getByRole('button', { name: 'Give up' }).click();
  await expect.poll(() => page.getByText('Trying setpoints').count()).toBe(0);
  await page.getByLabel('Start difference: From').fill('31');
  await expect.poll(() => page.getByText('Allowed from 1 to 30').count()).toBe(2);
  expect(await page.getByRole('button', { name: 'Try them all' }).isDisabled()).toBe(true);
});

test('a loop is fitted from here, and without a controller its settings begin at the defaults', async () => {
  pages.monitor.show({
    name: 'test-loop',
    status: null,
    site: null,
    snapshot: null,
    snapshotAgeMs: null,
    clockAheadMs: null,
  });
  const page = await pages.open(other);
  await page.getByText('No controller has told its settings').waitFor();
  await page.getByText('No fit is kept.').waitFor();
  await page.getByRole('button', { name: 'Fit the loop' }).click();
  await page.getByText('Fitted to 5 days').waitFor();
  const value = await page.getByRole('textbox', { name: 'Start difference', exact: true }).inputValue();
  expect(Number(value)).toBe(defaultSettings.startDifferenceK);
});

/** Runs in the page: how many canvases of the report have curves on them. */
const drawnReports = `[...document.querySelectorAll('[data-report] canvas')].filter((canvas) => {
  const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
  let drawn = 0;
  for (let at = 3; at < data.length; at += 4) if (data[at] > 0) drawn++;
  return drawn > 2000;
}).length`;
