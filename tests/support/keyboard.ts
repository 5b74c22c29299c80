import type { Page } from 'playwright-core';

/** Name of what has the focus: its label, else its text. */
export const focused = (page: Page): Promise<unknown> =>
  page.evaluate(`(() => {
    const one = document.activeElement;
    return one.getAttribute('aria-label') ?? one.labels?.[0]?.textContent ?? one.textContent;
  })()`);

/** Goes on with the Tab key until the named element has the focus. */
export async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 120; presses++) {
    if ((await focused(page)) === name) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard does not reach ${name}`);
}
