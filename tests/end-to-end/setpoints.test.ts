import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { LogEvent } from '../../shared-types/log.ts';
import { defaultSettings, type Settings } from '../../shared-types/settings.ts';
import { changedValues } from '../../shared-types/settings-event.ts';
import { expectAccessible } from '../support/accessible.ts';
import { testSiteMessage } from '../support/fake-monitor/site.ts';
import { testLive, testNowMs, testSnapshot } from '../support/fake-monitor/snapshot.ts';
import { fakePages } from '../support/fake-pages.ts';
import { focused, tabTo } from '../support/keyboard.ts';

const tokens = { ask: 'ask-token-ask-token-ask-token', look: 'look-token-look-token-look' };
const pages = fakePages();
const guarded = fakePages(tokens);
const tall = { viewport: { width: 1280, height: 900 } };

async function open(view: Parameters<typeof pages.open>[1] = {}): Promise<Page> {
  const page = await pages.open('#/setpoints', { ...tall, ...view });
  await field(page, 'Start difference').waitFor();
  return page;
}

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const apply = (page: Page) => page.getByRole('button', { name: /^Apply/ });

/** What the controller tells once other settings are in force. */
const inForce = (change: Partial<Settings>, revision = 2) =>
  testLive({
    site: {
      ...testSiteMessage(),
      settings: { ...defaultSettings, ...change },
      settingsRevision: revision,
    },
    snapshot: { ...testSnapshot(), settingsRevision: revision },
  });

const pastChange = (after: Partial<Settings>, who = 'a monitor'): LogEvent => ({
  atMs: testNowMs - 3_600_000,
  kind: 'settings-changed',
  text: 'changed',
  values: {
    ...changedValues(defaultSettings, { ...defaultSettings, ...after }, ['startDifferenceK']),
    who,
    revision: 2,
  },
});

describe('the form', () => {
  test.each(['light', 'dark'] as const)(
    'with changes, reasons, an answer and history has nothing for axe to find in the %s scheme',
    async (scheme) => {
      pages.monitor.eventsAre([pastChange({ startDifferenceK: 3 })]);
      const page = await open({ colorScheme: scheme });
      await field(page, 'Start difference').fill('2.5');
      await page.getByText('the pump may cycle').waitFor();
      await page.getByRole('button', { name: 'Decide this day again' }).click();
      await page.getByText('Both decide alike until').waitFor();
      await field(page, 'Frost temperature').fill('8');
      await page.getByText('1 reason why').waitFor();
      await expectAccessible(page);
    },
  );

  test('fits a screen of 360 px, with a way from the field to what is changed', async () => {
    const page = await open({ viewport: { width: 360, height: 780 } });
    await field(page, 'Start difference').fill('2.5');
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    await page.getByRole('button', { name: 'Review 1 change' }).click();
    const heading = page.getByRole('heading', { name: 'Your changes' });
    const top = (await heading.boundingBox())?.y ?? -1;
    expect(top).toBeGreaterThanOrEqual(0);
    expect(top).toBeLessThan(200);
    await page.getByRole('button', { name: 'Decide this day again' }).click();
    await page.getByText('Both decide alike until').waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
  });

  test('says at both setpoints, and in sum, why a pair of values cannot be applied', async () => {
    const page = await open();
    await field(page, 'Stop difference').fill('0.8');
    const reason = 'The stop difference is at least 0.5 K below the start difference.';
    await page.getByText(reason).nth(2).waitFor();
    for (const name of ['Stop difference', 'Start difference'])
      expect(await field(page, name).getAttribute('aria-invalid')).toBe('true');
    expect(await apply(page).isDisabled()).toBe(true);
    expect(await page.getByRole('button', { name: 'Decide this day again' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Stop difference: leave as it is' }).click();
    await page.getByText(reason).first().waitFor({ state: 'detached' });
  });

  test('sends what was written in degrees Fahrenheit in the unit of the table', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Appearance and units' }).click();
    await page.getByText('°F', { exact: true }).click();
    await page.keyboard.press('Escape');
    expect(await field(page, 'Frost temperature').inputValue()).toBe('39.2');
    await field(page, 'Frost temperature').fill('41');
    await field(page, 'Start difference').fill('4.5');
    await page.getByText('Frost temperature: 39.2\u00a0°F → 41\u00a0°F').waitFor();
    await apply(page).click();
    await page.getByRole('button', { name: 'Yes, apply them' }).click();
    await page.getByText('Accepted.').waitFor();
    const settings = { startDifferenceK: 2.5, frostTemperatureC: 5 };
    expect(pages.monitor.asked).toEqual([{ kind: 'change-settings', settings }]);
  });

  test('lets a value be typed that begins like the one in force', async () => {
    const page = await open();
    await field(page, 'Start difference').focus();
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('1.05');
    expect(await field(page, 'Start difference').inputValue()).toBe('1.05');
    await page.getByText('Start difference: 1\u00a0K → 1.05\u00a0K').waitFor();
  });

  test('keeps its changes while another screen is looked at', async () => {
    const page = await open();
    await field(page, 'Drain time').fill('700');
    await page.getByRole('link', { name: 'Days' }).click();
    await page.getByRole('heading', { name: 'June 2031' }).waitFor();
    await page.getByRole('link', { name: 'Setpoints' }).click();
    expect(await field(page, 'Drain time').inputValue()).toBe('700');
  });
});

describe('a change of settings', () => {
  test('is made with the keyboard alone: searched, written, confirmed, in force when the loop says so', async () => {
    const page = await open();
    await tabTo(page, 'Search names and sentences');
    await page.keyboard.type('start difference');
    await page.getByText('2 setpoints shown').waitFor();
    await tabTo(page, 'Start difference');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('2.5');
    await tabTo(page, 'Apply 1 setpoint …');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').getByText('Start difference: 1\u00a0K → 2.5\u00a0K').waitFor();
    // The harmless way out has the focus: Enter alone must not change anything.
    await expect.poll(() => focused(page)).toBe('Leave it as it is');
    expect(pages.monitor.asked).toEqual([]);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    const outcome = page.locator('[data-state]');
    await page.locator('[data-state=accepted]').waitFor();
    expect(await outcome.textContent()).toContain('Waiting until the controller tells these settings');
    expect(pages.monitor.asked).toEqual([{ kind: 'change-settings', settings: { startDifferenceK: 2.5 } }]);
    pages.monitor.show(inForce({ startDifferenceK: 2.5 }));
    await page.locator('[data-state=confirmed]').waitFor();
    expect(await outcome.textContent()).toContain('In force as settings 2.');
    await page.getByText('Nothing is changed.').waitFor();
  });

  test('that is refused says why, and the changes stay', async () => {
    pages.monitor.answerWith({ accepted: false, code: 'settings-refused', text: 'Too warm for this.' });
    const page = await open();
    await field(page, 'Store limit').fill('70');
    await apply(page).click();
    await page.getByRole('button', { name: 'Yes, apply them' }).click();
    await page.getByText('Refused, nothing was changed. Too warm for this.').waitFor();
    expect(await field(page, 'Store limit').inputValue()).toBe('70');
  });

  test('by somebody else meanwhile is said, and theirs or mine is chosen before anything is sent', async () => {
    const page = await open();
    await field(page, 'Start difference').fill('2.5');
    pages.monitor.show(inForce({ startDifferenceK: 4, drainTimeS: 700 }));
    const note = page.getByRole('region', { name: 'Changed elsewhere meanwhile' });
    await note.getByText('Start difference: 1\u00a0K → 4\u00a0K (yours: 2.5\u00a0K)').waitFor();
    await note.getByText('Drain time: 900\u00a0s → 700\u00a0s').waitFor();
    expect(await apply(page).isDisabled()).toBe(true);
    await note.getByRole('button', { name: 'Keep mine' }).click();
    await page.getByText('Start difference: 4\u00a0K → 2.5\u00a0K').waitFor();
    expect(await apply(page).isEnabled()).toBe(true);
    pages.monitor.show(inForce({ startDifferenceK: 5 }, 3));
    await note.getByRole('button', { name: 'Take theirs' }).click();
    expect(await field(page, 'Start difference').inputValue()).toBe('5');
    await page.getByText('Nothing is changed.').waitFor();
  });

  test('is undone as a change of its own, seen before it is sent', async () => {
    pages.monitor.show(inForce({ startDifferenceK: 3 }));
    const hostile = '<img src=x onerror="document.title=1">';
    pages.monitor.eventsAre([pastChange({ startDifferenceK: 3 }, hostile)]);
    const page = await open();
    await page.getByText(`by ${hostile}, settings 2`).waitFor();
    await page.getByRole('button', { name: /^Undo the change of/ }).click();
    await page.getByText('Start difference: 3\u00a0K → 1\u00a0K').waitFor();
    await page.getByText('Nothing is applied yet.').waitFor();
    expect(await page.locator('main img').count()).toBe(0);
    expect(pages.monitor.asked).toEqual([]);
  });

  test('cannot be sent while no controller listens, and the form stays usable', async () => {
    pages.monitor.show(testLive({ status: { schema: 1, state: 'lost' } }));
    const page = await open();
    await field(page, 'Drain time').fill('700');
    await page.getByText('Nothing can be applied now').waitFor();
    expect(await apply(page).isDisabled()).toBe(true);
  });
});

test('whoever may only look reads the values and cannot change them', async () => {
  guarded.monitor.eventsAre([pastChange({ startDifferenceK: 3 })]);
  const page = await guarded.open('#/setpoints', tall);
  await page.getByLabel('Token').fill(tokens.look);
  await page.keyboard.press('Enter');
  await page.getByText('the values can be read here and not changed').waitFor();
  expect(await field(page, 'Start difference').inputValue()).toBe('1');
  expect(await field(page, 'Start difference').getAttribute('readonly')).not.toBeNull();
  expect(await page.getByRole('button', { name: /back to default|^Undo/ }).count()).toBe(0);
});

test('a day decided again tells where decisions part, and when its answer is of other values', async () => {
  const page = await open();
  await page.getByText('Change a value first.').waitFor();
  await field(page, 'Start difference').fill('2.5');
  await page.getByRole('button', { name: 'Decide this day again' }).click();
  await page.getByText('Both decide alike until 09:20:30.').waitFor();
  await page.getByText('the pump starts at 2.5 K.').waitFor();
  await page.getByText('Fill delay: 150\u00a0s → 120\u00a0s').waitFor();
  await field(page, 'Start difference').fill('3');
  await page.getByText('This is the answer for other values').waitFor();
});
