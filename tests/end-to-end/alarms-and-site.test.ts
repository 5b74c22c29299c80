import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { en } from '../../desktop/ui/text/en.ts';
import type { Alarm } from '../../shared-types/alarms.ts';
import type { SiteLive } from '../../shared-types/monitor-api.ts';
import { expectAccessible } from '../support/accessible.ts';
import { testDecision, testLive, testNowMs, testSnapshot } from '../support/fake-monitor/snapshot.ts';
import { fakePages } from '../support/fake-pages.ts';
import { focused, tabTo } from '../support/keyboard.ts';
import { until } from '../support/wait.ts';

const pages = fakePages();
const { open } = pages;

const alarm = (code: Alarm['code'], change: Partial<Alarm> = {}): Alarm => ({
  code,
  priority: 'soon',
  state: 'unacknowledged',
  active: true,
  sinceMs: testNowMs - 95 * 60_000,
  values: {},
  text: `What is so at ${code}.`,
  ...change,
});

const alarms: Alarm[] = [
  alarm('frost-danger', { priority: 'urgent' }),
  alarm('pan-sensors-failed'),
  alarm('sensor-failed', { state: 'suppressed', follows: 'pan-sensors-failed' }),
  alarm('flow-low', { state: 'acknowledged', priority: 'when-convenient' }),
  alarm('poor-contact', { state: 'shelved', shelvedUntilMs: testNowMs + 80 * 60_000 }),
  alarm('scald-caution', { state: 'returned-unacknowledged', active: false }),
];

/** Everything that the two screens can show, the bad beside the good. */
const troubled: SiteLive = testLive({
  snapshot: {
    ...testSnapshot({
      alarms,
      learnt: { fullFlowLMin: 13.2, outletOffsetK: 0.2, outletOffsetSdK: 0.4, primingS: 42 },
      belief: {
        ...testDecision.belief,
        readings: {
          ...testDecision.belief.readings,
          panOutletC: { quality: 'failed', cause: 'open-circuit' },
          panSheetC: { quality: 'doubtful', value: 61, ageMs: 500, cause: 'jumped' },
        },
      },
      commissioning: {
        step: 'done',
        text: 'The run is done.',
        findings: [
          { check: 'fill-time', result: 'passed', text: 'The pan fills in 24 min.' },
          { check: 'pump-direction', result: 'failed', text: 'Look for a pump that turns the wrong way.' },
          { check: 'outputs-drop', result: 'by-hand', text: 'Pull the wire.' },
        ],
      },
    }),
    link: {
      kind: 'mqtt',
      connected: true,
      taken: 9000,
      ignored: 3,
      lastIgnored: 'test/readings: <img src=x onerror=alert(1)>',
      losses: 1,
    },
    device: {
      readings: {
        panOutletC: { value: null, ageMs: 900, fault: 'open-circuit' },
        storeBottomC: { value: 37.9, ageMs: 2000 },
      },
      feedback: { pumpFraction: 1, drainOpen: true, ageMs: 1500 },
      renewedAgeMs: 0,
    },
  },
});

const screens = [
  ['#/alarms', 'Less water flows than it should'],
  ['#/site', 'Revision of the setpoints'],
] as const;
const phone = { width: 360, height: 780 };

async function unfold(page: Page): Promise<void> {
  for (const summary of await page.locator('summary').all()) await summary.click();
}

describe.each(screens)('%s', (hash, ready) => {
  test.each(['light', 'dark'] as const)('has nothing for axe to find in the %s scheme', async (scheme) => {
    pages.monitor.show(troubled);
    const page = await open(hash, { colorScheme: scheme });
    await page.getByText(ready).first().waitFor();
    await unfold(page);
    await expectAccessible(page);
  });

  test('fits a screen of 360 px without scrolling sideways', async () => {
    pages.monitor.show(troubled);
    const page = await open(hash, { viewport: phone });
    await page.getByText(ready).first().waitFor();
    await unfold(page);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(phone.width);
  });
});

describe('Alarms', () => {
  test('calmly says when nothing needs anybody, and when the last alarm was', async () => {
    const page = await open('#/alarms');
    await page.getByText(en.alarms.summary.calm).waitFor();
    await page.getByText('The last alarm: Less water flows than it should, over since Fri 20 Jun').waitFor();
    expect(await page.getByText(en.alarms.current).count()).toBe(0);
  });

  test('does not call it calm when the controller was not heard for long', async () => {
    pages.monitor.show(testLive({ snapshotAgeMs: 300_000 }));
    const page = await open('#/alarms');
    await page.getByText(/^Nothing needed you when the controller was last heard, 5.min ago/).waitFor();
  });

  test('puts first causes first, with what to do, and what was put aside apart', async () => {
    pages.monitor.show(troubled);
    const page = await open('#/alarms');
    await page
      .getByText('3 alarms need you: 1 within minutes, 1 within the day, 1 at the next visit.')
      .waitFor();
    expect(
      await page.evaluate(`[...document.querySelectorAll('[data-alarm]')].map((one) => one.dataset.alarm)`),
    ).toEqual(['frost-danger', 'pan-sensors-failed', 'sensor-failed', 'flow-low', 'scald-caution']);
    expect(await page.locator('[data-alarm=sensor-failed]').isVisible()).toBe(false);
    await page.locator('[data-alarm=frost-danger]').getByText(en.alarms.shelve.never).waitFor();
    expect(await page.locator('[data-alarm=frost-danger]').getByText('Put aside …').count()).toBe(0);
    await page.locator('[data-shelved=poor-contact]').getByText('Until 14:40').waitFor();
    await page.locator('[data-alarm=scald-caution]').getByText('over, not yet seen').waitFor();
  });

  test('puts an alarm aside by keyboard alone: its end said before, its outcome after', async () => {
    pages.monitor.show(troubled);
    const page = await open('#/alarms');
    const name = 'The pan cannot be measured';
    await page.locator('[data-alarm=pan-sensors-failed]').waitFor();
    await tabTo(page, `Put aside …: ${name}`);
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByText('It comes back by itself 14:20').waitFor();
    // The harmless way out has the focus: Enter alone puts nothing aside.
    await until('the focus on the way out', async () => (await focused(page)) === en.alarms.shelve.cancel);
    expect(pages.monitor.asked).toEqual([]);
    await dialog.getByRole('radio', { name: '1\u00a0h' }).focus();
    await page.keyboard.press('ArrowRight');
    await dialog.getByText('It comes back by itself 17:20').waitFor();
    await tabTo(page, en.alarms.shelve.confirm);
    await page.keyboard.press('Enter');
    await page.getByText(`Put aside, ${name}: Accepted: the test controller does so.`).waitFor();
    expect(pages.monitor.asked).toEqual([{ kind: 'shelve', alarm: 'pan-sensors-failed', minutes: 240 }]);
  });

  test('marks as seen and takes back from the shelf, and says why when that is refused', async () => {
    pages.monitor.show(troubled);
    pages.monitor.answerWith({
      accepted: false,
      code: 'no-such-alarm',
      text: 'Refused: there is no such alarm now.',
    });
    const page = await open('#/alarms');
    await page.getByRole('button', { name: /^Mark as seen.*The water in the store scalds/ }).click();
    await page.getByText('Mark as seen, The water in the store scalds: Refused').waitFor();
    await page.getByRole('button', { name: /^Take it back now.*The sheet does not lie well/ }).click();
    await page.getByText('Take back, The sheet does not lie well on the water: Refused').waitFor();
    expect(pages.monitor.asked).toEqual([
      { kind: 'acknowledge', alarm: 'scald-caution' },
      { kind: 'unshelve', alarm: 'poor-contact' },
    ]);
  });

  test('asks for nothing while no controller listens, and says so', async () => {
    pages.monitor.show({ ...troubled, status: { schema: 1, state: 'lost' } });
    const page = await open('#/alarms');
    await page.getByText(en.requests.unavailable).waitFor();
    for (const button of await page.locator('[data-alarm] button, [data-shelved] button').all())
      expect(await button.isDisabled()).toBe(true);
  });

  test('finds past alarms by words and priority, with their times; hostile text stays text', async () => {
    const page = await open('#/alarms');
    await page.getByText('2 in all').waitFor();
    await page.getByText('A sensor failed: <b>Wind</b>.').waitFor();
    await page.getByLabel(en.alarms.history.find).fill('wind');
    await page.getByText('1 of 2').waitFor();
    await page.getByText('not seen').waitFor();
    await page.getByLabel(en.alarms.history.priority).selectOption('urgent');
    await page.getByText(en.alarms.history.noneFits).waitFor();
  });
});

describe.each(['light', 'dark'] as const)('in the %s scheme, axe finds nothing', (colorScheme) => {
  test('in the question for how long an alarm is put aside', async () => {
    pages.monitor.show(troubled);
    const page = await open('#/alarms', { colorScheme });
    await page
      .locator('[data-alarm=pan-sensors-failed]')
      .getByRole('button', { name: /^Put aside/ })
      .click();
    await page.getByRole('dialog').getByText(en.alarms.shelve.stays).waitFor();
    await expectAccessible(page);
  });

  test('in a commissioning run that asks something', async () => {
    const run = { step: 'filling' as const, text: 'The pump fills the pan.', findings: [] };
    const lease = { kind: 'commission', remainingMs: 5_400_000 } as const;
    pages.monitor.show(testLive({ snapshot: testSnapshot({ commissioning: run, lease, phase: 'filling' }) }));
    const page = await open('#/site', { colorScheme });
    await page.getByText(en.commissioning.asks.full).waitFor();
    await expectAccessible(page);
    await page.getByRole('button', { name: en.commissioning.confirms.full }).click();
    await page.getByText('What you saw: Accepted: the test controller does so.').waitFor();
    expect(pages.monitor.asked).toEqual([{ kind: 'confirm' }]);
  });
});

describe('Site', () => {
  test('shows no number for a failed sensor, what came in, and what the device says otherwise', async () => {
    pages.monitor.show(troubled);
    const page = await open('#/site');
    const outlet = page.locator('[data-sensor=panOutletC]');
    await outlet.getByText('failed', { exact: true }).waitFor();
    expect(await outlet.locator('dl').textContent()).not.toMatch(/\d.°C/);
    await page.locator('[data-sensor=storeBottomC]').getByText('37.9\u00a0°C').first().waitFor();
    await page.locator('[data-output=pump]').getByText('100 %').first().waitFor();
    await page.locator('[data-output=drain]').getByText('open, differs').waitFor();
    await page.getByText('test/readings: <img src=x onerror=alert(1)>').waitFor();
    await page.getByText('48.2\u00a0MB').waitFor();
    await page.getByText('13.2\u00a0L/min').waitFor();
    await page.locator('[data-check=pump-direction]').getByText('failed').waitFor();
  });

  test('of a controller that tells no more than it used to says so', async () => {
    const page = await open('#/site');
    await page.locator('[data-sensor=panOutletC]').getByText(en.site.unknown).waitFor();
    await page.getByText(en.site.learnt.nothing).waitFor();
  });

  test('stays usable while no controller was heard', async () => {
    pages.monitor.show(testLive({ snapshot: null, site: null, status: { schema: 1, state: 'lost' } }));
    const page = await open('#/site');
    await page.getByText(en.site.unheard).waitFor();
    await page.locator('dd').getByText(en.site.links.statuses.lost).waitFor();
  });
});
