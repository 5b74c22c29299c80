import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { expectAccessible } from '../support/accessible.ts';
import { testSiteMessage } from '../support/fake-monitor/site.ts';
import { testLive, testSnapshot } from '../support/fake-monitor/snapshot.ts';
import { fakePages } from '../support/fake-pages.ts';
import { until } from '../support/wait.ts';

const pages = fakePages();
const { open } = pages;

const hostile = '<img src=x onerror="document.title=1"> of a site whose title is as long as one may be, and';
const annex = testLive({
  name: 'annex',
  site: testSiteMessage(hostile.slice(0, 80)),
  snapshot: testSnapshot({ phase: 'resting' }),
});
const chosen = (page: Page) => page.getByRole('combobox', { name: 'Site' });
const hashOf = (page: Page) => new URL(page.url()).hash;

describe('several sites', () => {
  test('are chosen with the keyboard; the address keeps the choice over a reload, links and the way back', async () => {
    const page = await open('#/live');
    await page.getByText('Circulating').first().waitFor();
    expect(hashOf(page)).toBe('#/live');
    // Earlier in the alphabet than the one on the screen, which stays.
    pages.monitor.show(annex);
    await chosen(page).waitFor();
    expect(await chosen(page).inputValue()).toBe('test-loop');
    await until('the site in the address', () => hashOf(page) === '#/live?site=test-loop');
    await chosen(page).focus();
    await page.keyboard.press('ArrowUp');
    await page.getByText('Resting').first().waitFor();
    expect(hashOf(page)).toBe('#/live?site=annex');
    await page.reload();
    await page.getByText('Resting').first().waitFor();
    expect(await chosen(page).inputValue()).toBe('annex');
    await page.getByRole('link', { name: 'Days' }).click();
    await page.getByText('June 2031').first().waitFor();
    expect(hashOf(page)).toBe('#/days?site=annex');
    await page.goBack();
    await page.goBack();
    await page.getByText('Circulating').first().waitFor();
    expect(await chosen(page).inputValue()).toBe('test-loop');
    expect(await page.locator('img').count()).toBe(0);
  });

  test('that go are said to be gone, and nothing of another is shown for them', async () => {
    pages.monitor.show(annex);
    const page = await open('#/live?site=annex');
    await page.getByText('Resting').first().waitFor();
    pages.monitor.take('annex');
    await page.getByText('Nothing is heard of a site called annex.').waitFor();
    expect(await page.getByText('Circulating').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Run the pump' }).count()).toBe(0);
    await chosen(page).selectOption('test-loop');
    await page.getByText('Circulating').first().waitFor();
  });

  test.each(['constructor', '__proto__', '<img src=x>', '../days'])(
    'that nobody has, such as %s, are named as they stand in the address',
    async (name) => {
      const page = await open(`#/live?site=${encodeURIComponent(name)}`);
      await page.getByText(`Nothing is heard of a site called ${name}.`).waitFor();
      await page.getByRole('link', { name: 'Days' }).click();
      await page.getByRole('heading', { name: 'Days' }).or(page.getByText('June 2031')).first().waitFor();
    },
  );

  test.each(['light', 'dark'] as const)(
    'fit a small screen, and axe finds nothing: %s',
    async (colorScheme) => {
      pages.monitor.show(annex);
      const page = await open('#/live?site=annex', { colorScheme, viewport: { width: 360, height: 780 } });
      await page.getByText('Resting').first().waitFor();
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
      await expectAccessible(page);
    },
  );
});
