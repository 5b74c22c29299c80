import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { focused, tabTo } from '../support/keyboard.ts';
import { type House, startHouse } from '../support/running-house.ts';

/** Setpoints of a real controller with a log, beside a simulated device. */
describe('setpoints of a controller that runs', () => {
  let house: House;
  let page: Page;

  beforeAll(async () => {
    house = await startHouse('#/setpoints', {
      changes: { control: { stepS: 1 }, settings: { startDifferenceK: 2 } },
      from: '2031-06-21T15:00:00Z',
      speed: 5,
      viewport: { width: 1280, height: 900 },
    });
    ({ page } = house);
  });
  afterAll(() => house?.stop());

  const difference = () => page.getByRole('textbox', { name: 'Start difference', exact: true });

  async function write(value: string): Promise<void> {
    await tabTo(page, 'Start difference');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(value);
  }

  async function applyIt(): Promise<void> {
    await tabTo(page, 'Apply 1 setpoint …');
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('Leave it as it is');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
  }

  test('are changed with the keyboard alone, and in force once the controller steps by them', async () => {
    await difference().waitFor();
    expect(await difference().inputValue()).toBe('2');
    await write('3.5');
    await applyIt();
    await page.locator('[data-state=confirmed]').waitFor();
    await page.getByText('In force as settings 2.').waitFor();
    await page.getByText('Start difference: 2\u00a0K → 3.5\u00a0K').waitFor();
    await page.getByText(/^by monitor on .+, settings 2$/).waitFor();
  });

  test('would have decided today as they did, or otherwise, by the log of that day', async () => {
    await page.getByRole('textbox', { name: 'Fill difference', exact: true }).fill('60');
    await tabTo(page, 'Decide this day again');
    await page.keyboard.press('Enter');
    await page.getByText('Compared with the settings of that day:').waitFor();
    await page.getByRole('row', { name: /^Pump starts/ }).waitFor();
    await page.getByRole('button', { name: 'Drop my changes' }).click();
  });

  test('tell what is to be known of a value before it is sent', async () => {
    await page.getByRole('textbox', { name: 'Store limit', exact: true }).fill('75');
    await page.getByText(/The store may come to 75 °C\./).waitFor();
    await page.getByRole('button', { name: 'Drop my changes' }).click();
  });

  test('go back by an undo that is applied like any change', async () => {
    await page.getByRole('button', { name: /^Undo the change of/ }).click();
    await applyIt();
    await page.getByText('In force as settings 3.').waitFor();
    await expect.poll(() => difference().inputValue()).toBe('2');
    await page.getByText('These values are in force already.').first().waitFor();
  });
});
