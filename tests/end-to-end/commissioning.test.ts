import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { en } from '../../desktop/ui/text/en.ts';
import { focused, tabTo } from '../support/keyboard.ts';
import { type House, startHouse } from '../support/running-house.ts';
import { until } from '../support/wait.ts';

const text = en.commissioning;

/** The real controller, simulated device and monitor: the run is started, watched and broken off. */
describe('a commissioning run in a real browser', () => {
  let house: House;
  let page: Page;

  beforeAll(async () => {
    house = await startHouse('#/site', {
      changes: { control: { stepS: 5 } },
      from: '2031-06-21T03:00:00Z',
      speed: 60,
      viewport: { width: 360, height: 780 },
    });
    ({ page } = house);
  });
  afterAll(() => house?.stop());

  const confirmIn = async (button: string) => {
    await until('the focus on the way out', async () => (await focused(page)) === en.requests.cancel);
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe(en.requests.confirm(button));
    await page.keyboard.press('Enter');
  };

  it('shows every sensor as it came in, and when the outputs were last renewed', async () => {
    const row = page.locator('[data-sensor=storeBottomC]');
    await row.getByText(/°C/).first().waitFor();
    await until('a reading as it came in', async () =>
      /As it came in[\d.]+.°C/.test((await row.textContent()) ?? ''),
    );
    await page.getByText(/^Last renewed \d+.s ago/).waitFor();
    await page.locator('[data-output=pump]').getByText('✓').waitFor();
  });

  it('waits for what a person has to make sure of', async () => {
    const button = page.getByRole('button', { name: text.start.button });
    expect(await button.isDisabled()).toBe(true);
    const boxes = await page.getByRole('checkbox').all();
    expect(boxes).toHaveLength(3);
    for (const box of boxes) {
      expect(await button.isDisabled()).toBe(true);
      await box.focus();
      await page.keyboard.press('Space');
    }
    expect(await button.isDisabled()).toBe(false);
  });

  it('is started and broken off by keyboard alone, and the log tells of it', async () => {
    await tabTo(page, text.start.button);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').getByText(text.start.consequence).waitFor();
    await confirmIn(text.start.button);
    await page.getByText(/^Start the run: Accepted/).waitFor();
    await page.getByText(/^Under way/).waitFor();
    const steps = page.getByRole('list', { name: text.stepList });
    await until('the fill to be measured', async () =>
      ((await steps.locator('[aria-current=step]').textContent()) ?? '').includes(text.steps.filling),
    );
    await tabTo(page, text.stop.button);
    await page.keyboard.press('Enter');
    await confirmIn(text.stop.button);
    await page.getByText(/^Break the run off: Accepted/).waitFor();
    await page.getByText(/^The run was broken off/).waitFor();
    await page.getByText(/: Commissioning run broken off$/).waitFor();
  });
});
