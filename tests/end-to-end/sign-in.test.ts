import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { buildPage } from '../support/built-page.ts';
import { type FakeMonitor, startFakeMonitor } from '../support/fake-monitor/fake-monitor.ts';
import type { TemporaryFolder } from '../support/temporary.ts';
import { until } from '../support/wait.ts';

const tokens = { ask: 'ask-token-ask-token-ask-token', look: 'look-token-look-token-look' };
let folder: TemporaryFolder;
let browser: Browser;
let monitor: FakeMonitor;
let context: BrowserContext | undefined;

beforeAll(async () => {
  folder = await buildPage();
  browser = await launchBrowser();
  monitor = await startFakeMonitor(folder.path, 0, tokens);
});
afterAll(async () => {
  await browser?.close();
  await monitor?.close();
  folder?.remove();
});
afterEach(async () => {
  monitor.reset();
  await context?.close();
});

async function open(view: Parameters<Browser['newContext']>[0] = {}): Promise<Page> {
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...view });
  const page = await context.newPage();
  await page.goto(`${monitor.url}#/live`);
  await page.getByRole('heading', { name: 'Sign in to this monitor' }).waitFor();
  return page;
}

async function signIn(page: Page, token: string): Promise<void> {
  await page.getByLabel('Token').fill(token);
  await page.keyboard.press('Enter');
}

describe('a monitor open to other machines', () => {
  test('shows nothing of a loop before somebody signed in, and says what is wrong with a token', async () => {
    const page = await open();
    expect(await page.title()).toContain('Sign in');
    expect(await page.getByText('Test loop').count()).toBe(0);
    await signIn(page, 'wrong');
    await page.getByRole('alert').getByText('does not know this token').waitFor();
    expect(await page.getByLabel('Token').getAttribute('aria-invalid')).toBe('true');
    expect(page.url()).not.toContain('wrong');
  });

  test('lets a person in, ask, and out again with the keyboard alone', async () => {
    const page = await open();
    await tabTo(page, 'Token');
    await page.keyboard.type(tokens.ask);
    await page.keyboard.press('Enter');
    await page.getByText('Ask the loop').waitFor();
    await tabTo(page, 'Back to automatic');
    await page.keyboard.press('Enter');
    await page.getByText('Accepted: the test controller does so.').waitFor();
    expect(monitor.asked).toEqual([{ kind: 'automatic' }]);
    await page.reload();
    await page.getByText('Ask the loop').waitFor();
    await tabTo(page, 'Appearance and units');
    await page.keyboard.press('Enter');
    await page.getByText('Signed in: you may ask').waitFor();
    await tabTo(page, 'Sign out');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Sign in to this monitor' }).waitFor();
    expect(await page.evaluate('document.cookie')).toBe('');
  });

  test('lets the other token look, and offers it no request', async () => {
    const page = await open();
    await signIn(page, tokens.look);
    await page.getByText('You are signed in to look only.').first().waitFor();
    await page.getByText('requests need the token that may ask').waitFor();
    expect(await page.getByRole('button', { name: 'Run the pump' }).isDisabled()).toBe(true);
    expect(monitor.asked).toEqual([]);
  });

  test.each(['light', 'dark'] as const)(
    'has nothing for axe to find at its door: %s',
    async (colorScheme) => {
      const page = await open({ colorScheme, viewport: { width: 360, height: 780 } });
      await signIn(page, 'wrong');
      await page.getByRole('alert').getByText('does not know').waitFor();
      const found = await new AxeBuilder({ page }).analyze();
      expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html)}`)).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    },
  );
});

const nameOfFocused = `(() => {
  const focused = document.activeElement;
  return focused.getAttribute('aria-label') ?? focused.labels?.[0]?.textContent ?? focused.textContent;
})()`;

async function tabTo(page: Page, name: string): Promise<void> {
  await until(`the focus on ${name}`, async () => {
    if (String(await page.evaluate(nameOfFocused)).startsWith(name)) return true;
    await page.keyboard.press('Tab');
    return false;
  });
}
