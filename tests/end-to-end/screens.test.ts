import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Alarm } from '../../shared-types/alarms.ts';
import { expectAccessible } from '../support/accessible.ts';
import { testSiteMessage } from '../support/fake-monitor/site.ts';
import { testDecision, testLive, testNowMs, testSnapshot } from '../support/fake-monitor/snapshot.ts';
import { fakePages } from '../support/fake-pages.ts';
import { focused, tabTo } from '../support/keyboard.ts';
import { until } from '../support/wait.ts';

const pages = fakePages();
const { open } = pages;

const failing = testLive({
  snapshot: testSnapshot({
    alarms: [
      {
        code: 'pan-sensors-failed',
        priority: 'urgent',
        state: 'unacknowledged',
        active: true,
        sinceMs: testNowMs - 95_000,
        values: {},
        text: 'No sensor of the pan can be trusted.',
      },
      {
        code: 'sensor-failed',
        priority: 'soon',
        state: 'suppressed',
        active: true,
        sinceMs: testNowMs - 100_000,
        follows: 'pan-sensors-failed',
        values: {},
        text: 'The pan outlet sensor has an open circuit.',
      },
    ] satisfies Alarm[],
    belief: {
      ...testDecision.belief,
      readings: {
        ...testDecision.belief.readings,
        panOutletC: { quality: 'failed', cause: 'open-circuit' },
        panSheetC: { quality: 'doubtful', value: 61, ageMs: 500, cause: 'jumped' },
        storeTopC: { quality: 'good', value: 71.2, ageMs: 500 },
      },
    },
  }),
});

/** Screens with the text that is there once they show what they are for. */
const screens = [
  ['#/live', 'Circulating'],
  ['#/days', 'June 2031'],
  ['#/days/2031-06-20', 'What happened'],
  ['#/replay/2031-06-20', 'Through the day'],
] as const;

const phone = { width: 360, height: 780 };

describe.each(screens)('%s', (hash, ready) => {
  test.each(['light', 'dark'] as const)('has nothing for axe to find in the %s scheme', async (scheme) => {
    pages.monitor.show(failing);
    const page = await open(hash, { colorScheme: scheme });
    await page.getByText(ready).first().waitFor();
    if (hash.startsWith('#/replay')) await replayed(page);
    for (const summary of await page.locator('summary').all()) await summary.click();
    await expectAccessible(page);
  });

  test('fits a screen of 360 px without scrolling sideways', async () => {
    pages.monitor.show(failing);
    const page = await open(hash, { viewport: phone });
    await page.getByText(ready).first().waitFor();
    if (hash.startsWith('#/replay')) await replayed(page);
    for (const summary of await page.locator('summary').all()) await summary.click();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(phone.width);
  });
});

async function replayed(page: Page): Promise<void> {
  pages.monitor.replaySame(false);
  await page.getByRole('button', { name: 'Run the replay' }).click();
  await page.getByText('Different decisions: 412 of 17,280 steps.').waitFor();
}

describe('Live', () => {
  test('shows the engine’s sentence, the day’s heat and the values of the snapshot', async () => {
    const page = await open('#/live');
    await page.getByText(testDecision.reasons.phase.text).waitFor();
    await page.getByText('18.5', { exact: true }).waitFor();
    expect(await page.locator('[data-channel=panOutletC]').textContent()).toContain('47.3\u00a0°C');
    expect(await page.title()).toBe('Circulating · Test loop · flatwater');
    pages.monitor.show(testLive({ snapshot: testSnapshot({ phase: 'resting' }) }));
    await until('the title of another phase', async () => (await page.title()).startsWith('Resting'));
  });

  test('shows no number for a failed sensor, neither in the list nor in the drawing', async () => {
    pages.monitor.show(failing);
    const page = await open('#/live');
    const row = page.locator('[data-channel=panOutletC]');
    await row.waitFor();
    expect(await row.getAttribute('data-look')).toBe('failed');
    const label = page.locator('svg text', { hasText: 'Pan outlet' });
    for (const place of [row, label]) {
      const text = (await place.textContent()) ?? '';
      expect(text).toContain('failed');
      expect(text).not.toMatch(/\d/);
    }
    expect(await row.textContent()).toContain('open circuit');
    expect(await page.locator('[data-channel=panSheetC]').textContent()).toContain('doubtful');
  });

  test('warns of scalding water as long as there is some', async () => {
    pages.monitor.show(failing);
    const page = await open('#/live');
    await page.getByText('Scald danger: the store holds water of 71.2').waitFor();
    pages.monitor.show(testLive());
    await page.getByText('Scald danger').waitFor({ state: 'detached' });
  });

  test('speaks a new alarm, with its first cause on top and its follower folded', async () => {
    const page = await open('#/live');
    await page.getByText('Nothing needs you.').waitFor();
    pages.monitor.show(failing);
    const spoken = page.getByRole('alert');
    await until('the alarm to be spoken', async () => (await spoken.textContent()) !== '');
    expect(await spoken.textContent()).toBe('New alarm: The pan cannot be measured');
    await page.getByRole('link', { name: 'Alarms 1 standing' }).waitFor();
    expect(await page.getByText('The pan outlet sensor has an open circuit.').isVisible()).toBe(false);
    await page.getByText('One alarm follows from it').click();
    expect(await page.getByText('The pan outlet sensor has an open circuit.').isVisible()).toBe(true);
  });

  test('moves the flow only while it is proven, and lets a person stop it', async () => {
    const page = await open('#/live');
    const running = () =>
      page.evaluate('document.getAnimations().filter((one) => one.animationName !== undefined).length');
    await until('the flow to move', async () => Number(await running()) > 0);
    await page.getByRole('button', { name: 'Pause the flow' }).click();
    expect(await running()).toBe(0);
    await page.getByRole('button', { name: 'Show the flow moving' }).click();
    await until('the flow to move again', async () => Number(await running()) > 0);
    pages.monitor.show(
      testLive({ snapshot: testSnapshot({ belief: { ...testDecision.belief, flowProven: false } }) }),
    );
    await page.getByText('100 %, flow not proven').waitFor();
    expect(await running()).toBe(0);
  });

  test('moves nothing for whoever wants no motion', async () => {
    const page = await open('#/live', { reducedMotion: 'reduce' });
    await page.getByText('13.4\u00a0L/min').first().waitFor();
    expect(await page.evaluate('document.getAnimations().length')).toBe(0);
  });
});

describe('a request', () => {
  test('is made with the keyboard alone: said before, confirmed, answered', async () => {
    const page = await open('#/live');
    await page.getByText('Ask the loop').waitFor();
    await tabTo(page, 'Run the pump: Minutes');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('25');
    await page.getByText('Runs the pump for 25 min').waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').getByText('It may carry heat out of the store').waitFor();
    // The harmless way out has the focus: Enter alone must not start anything.
    await until('the focus on the way out', async () => (await focused(page)) === 'Leave it as it is');
    expect(pages.monitor.asked).toEqual([]);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Accepted: the test controller does so.').waitFor();
    expect(pages.monitor.asked).toEqual([{ kind: 'run-pump', minutes: 25 }]);
  });

  test('that is refused says why', async () => {
    pages.monitor.answerWith({
      accepted: false,
      code: 'hazard-forbids',
      text: 'Refused: frost comes first.',
    });
    const page = await open('#/live');
    await page.getByRole('button', { name: 'Back to automatic' }).click();
    await page.getByText('Refused: frost comes first.').waitFor();
  });

  test('is dropped with Escape', async () => {
    const page = await open('#/live');
    await page.getByRole('button', { name: 'Empty the pan' }).click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await until('the focus to be back', async () => (await focused(page)) === 'Empty the pan');
    expect(pages.monitor.asked).toEqual([]);
  });

  test('of minutes out of range is not made', async () => {
    const page = await open('#/live');
    await page.getByRole('textbox', { name: 'Run the pump: Minutes' }).fill('500');
    await page.getByText('A whole number from 1 to 120.').waitFor();
    await page.getByRole('button', { name: 'Run the pump' }).click();
    expect(await page.getByRole('dialog').count()).toBe(0);
  });

  test('cannot be made while no controller listens', async () => {
    pages.monitor.show(testLive({ status: { schema: 1, state: 'lost' } }));
    const page = await open('#/live');
    await page.getByText('The controller is gone without a word.').waitFor();
    expect(await page.getByRole('button', { name: 'Run the pump' }).isDisabled()).toBe(true);
  });
});

describe('the way around', () => {
  test('begins with a link past the bar, and the focus follows to a new screen', async () => {
    const page = await open('#/live');
    await page.getByText('Circulating').first().waitFor();
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('Skip to the content');
    await page.keyboard.press('Enter');
    expect(await page.evaluate('document.activeElement.tagName')).toBe('MAIN');
    await page.getByRole('link', { name: 'Days' }).click();
    await page.getByRole('heading', { name: 'June 2031' }).waitFor();
    await until(
      'the focus in the new screen',
      async () => (await page.evaluate('document.activeElement.tagName')) === 'MAIN',
    );
    expect(await page.getByRole('link', { name: 'Days' }).getAttribute('aria-current')).toBe('page');
  });

  test('leads from a day of the calendar to its curves and on to its replay', async () => {
    const page = await open('#/days');
    await page.getByRole('link', { name: /Friday.* 20 June 2031: 17\.2 kWh home/ }).click();
    await page.getByText('bringing heat home').first().waitFor();
    expect(new URL(page.url()).hash).toBe('#/days/2031-06-20');
    await page.getByRole('link', { name: 'Replay this day' }).click();
    await page.getByText('Through the day').waitFor();
    expect(new URL(page.url()).hash).toBe('#/replay/2031-06-20');
  });

  test('keeps choices of units', async () => {
    const page = await open('#/live');
    await page.getByRole('button', { name: 'Appearance and units' }).click();
    await page.getByText('°F', { exact: true }).click();
    await page.getByText('MJ', { exact: true }).click();
    await page.reload();
    await page.getByText('117.1\u00a0°F').first().waitFor();
    await page.getByText('66.6', { exact: true }).waitFor();
  });
});

describe('Replay', () => {
  test('offers the newest complete day and says that all decisions are the same', async () => {
    const page = await open('#/replay');
    const day = page.getByLabel('Day', { exact: true });
    await day.waitFor();
    expect(await day.inputValue()).toBe('2031-06-20');
    await page.getByRole('button', { name: 'Run the replay' }).click();
    await page.getByText('The same decisions, all 17,280 of them.').waitFor();
  });

  test('shows the first difference with both reasons and the inputs', async () => {
    const page = await open('#/replay/2031-06-20');
    await replayed(page);
    await page.getByText('The first difference, at 12:06:00').waitFor();
    await page.getByText('the pump starts at 6.0 K').waitFor();
    await page.getByText('the pump stops at 2.0 K').waitFor();
    await page.getByText('What it was given').click();
    await page.getByText('36.1\u00a0°C').first().waitFor();
    await page.getByText('0.83\u00a0kWh less').waitFor();
  });

  test('walks through the day with the keyboard', async () => {
    const page = await open('#/replay/2031-06-20');
    const slider = page.getByRole('slider', { name: 'Instant' });
    await slider.waitFor();
    expect(await slider.getAttribute('aria-valuetext')).toBe('09:24:00, Circulating');
    await slider.focus();
    await page.keyboard.press('ArrowLeft');
    expect(await slider.getAttribute('aria-valuetext')).toBe('09:23:00, Resting');
    await page.getByRole('button', { name: 'Phase before' }).click();
    expect(await slider.getAttribute('aria-valuetext')).toBe('08:42:00, Resting');
    await page.getByRole('button', { name: 'An hour on' }).click();
    expect(await slider.getAttribute('aria-valuetext')).toBe('09:42:00, Circulating');
  });
});

describe('what is amiss', () => {
  test('a broker that went away is said with its address', async () => {
    const page = await open('#/live');
    await page.getByText('Circulating').first().waitFor();
    pages.monitor.showHost({ brokerConnected: false });
    await page.getByText('The monitor has lost the broker mqtt://127.0.0.1:1883.').waitFor();
  });

  test('old values say how old they are and look it', async () => {
    pages.monitor.show(testLive({ snapshotAgeMs: 300_000 }));
    const page = await open('#/live');
    await page.getByText('The values below are 5\u00a0min old.').waitFor();
    const row = page.locator('[data-channel=panOutletC]');
    expect(await row.getAttribute('data-look')).toBe('old');
    expect(await row.textContent()).toContain('5\u00a0min old');
  });

  test('hostile text stays text', async () => {
    const hostile = '<img src=x onerror="document.title=1"><script>document.title=2</script>';
    const text = `${hostile}`;
    pages.monitor.show(
      testLive({
        site: testSiteMessage(hostile),
        snapshot: testSnapshot({
          reasons: { ...testDecision.reasons, phase: { ...testDecision.reasons.phase, text } },
        }),
      }),
    );
    pages.monitor.showHost({ problems: [{ severity: 'warning', text: hostile }] });
    const page = await open('#/live');
    await until(
      'the text in title, sentence and banner',
      async () => (await page.getByText(hostile).count()) === 3,
    );
    expect(await page.locator('img, main script').count()).toBe(0);
    expect(await page.title()).toContain(hostile);
  });
});
