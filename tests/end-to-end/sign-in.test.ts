import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { expectAccessible } from '../support/accessible.ts';
import { fakePages } from '../support/fake-pages.ts';
import { tabTo } from '../support/keyboard.ts';

const tokens = { ask: 'ask-token-ask-token-ask-token', look: 'look-token-look-token-look' };
const pages = fakePages(tokens);

async function open(view: Parameters<typeof pages.open>[1] = {}): Promise<Page> {
  const page = await pages.open('#/live', view);
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
    await tabTo(page, 'Token *');
    await page.keyboard.type(tokens.ask);
    await page.keyboard.press('Enter');
    await page.getByText('Ask the loop').waitFor();
    await tabTo(page, 'Back to automatic');
    await page.keyboard.press('Enter');
    await page.getByText('Accepted: the test controller does so.').waitFor();
    expect(pages.monitor.asked).toEqual([{ kind: 'automatic' }]);
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
    expect(pages.monitor.asked).toEqual([]);
  });

  test.each(['light', 'dark'] as const)(
    'has nothing for axe to find at its door: %s',
    async (colorScheme) => {
      const page = await open({ colorScheme, viewport: { width: 360, height: 780 } });
      await signIn(page, 'wrong');
      await page.getByRole('alert').getByText('does not know').waitFor();
      await expectAccessible(page);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    },
  );
});
