import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { recordHistory } from '../../sim/history.ts';
import { type House, startHouse } from '../support/running-house.ts';
import { demoContent, siteOf } from '../support/sites.ts';

const changes = { control: { stepS: 10, outputExpiryS: 60 } };
const fromMs = Date.UTC(2031, 5, 20, 5);

/** A controller with the better half of a logged day behind it, beside a simulated device. */
let house: House;
let page: Page;

beforeAll(async () => {
  house = await startHouse('#/replay/2031-06-20/other', {
    changes,
    from: '2031-06-21T09:00:00Z',
    speed: 20,
    viewport: { width: 1280, height: 900 },
    before: (dataFolder) =>
      recordHistory({
        dataFolder,
        site: siteOf(demoContent(changes)),
        seed: 7,
        kinds: ['clear'],
        fromMs,
        toMs: fromMs + 13 * 3_600_000,
      }),
  });
  ({ page } = house);
});
afterAll(() => house?.stop());

test('a logged day is lived under other setpoints, which then go to the controller that runs', async () => {
  const field = page.getByRole('textbox', { name: 'Start difference', exact: true });
  await field.fill('4');
  await page.getByRole('button', { name: 'Live this day again' }).click();
  await page.getByText(/^Living the day again: \d+ % done\.$/).waitFor();
  await page
    .getByRole('heading', { name: /20 June 2031, as set then and with your setpoints$/ })
    .waitFor({ timeout: 80_000 });
  expect(await page.getByRole('row', { name: /^Net heat home \d+\.\d+\skWh/ }).count()).toBe(1);
  await page.getByText('Sun: measured').first().waitFor();
  await page.getByText('Start difference: 1\u00a0K → 4\u00a0K').first().waitFor();

  await page.getByRole('link', { name: 'Review and apply on Setpoints …' }).click();
  await page.getByRole('button', { name: 'Apply 1 setpoint …' }).click();
  await page.getByRole('button', { name: 'Yes, apply them' }).click();
  await page.getByText('In force as settings 2.').waitFor();
});
