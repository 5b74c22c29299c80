import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { channelMeaning, channels } from '../../shared-types/channels.ts';
import type { DayCurves, DaySummary } from '../../shared-types/log.ts';
import type { SiteLive } from '../../shared-types/monitor-api.ts';
import { sensorUnitNames, sensorUnits } from '../../shared-types/sensor-units.ts';
import type { Site } from '../../shared-types/site.ts';
import type { FakeMonitor } from '../support/fake-monitor/fake-monitor.ts';
import { testDayCurves, testDays } from '../support/fake-monitor/history.ts';
import { testSite, testSiteMessage } from '../support/fake-monitor/site.ts';
import { testDecision, testLive, testSnapshot } from '../support/fake-monitor/snapshot.ts';
import { fakePages } from '../support/fake-pages.ts';

const pages = fakePages();

const screens = [
  'live',
  'days',
  'days/2031-06-20',
  'replay/2031-06-20',
  'setpoints',
  'alarms',
  'site',
] as const;
type Screen = (typeof screens)[number];
const logScreens: readonly Screen[] = ['live', 'days', 'days/2031-06-20', 'replay/2031-06-20', 'alarms'];

interface Situation {
  readonly bring: (monitor: FakeMonitor) => void;
  readonly says: RegExp;
  /** Screens where that has to stand, and that are looked at; all of them without it. */
  readonly on?: readonly Screen[];
}

const message = testSiteMessage();
const withSite = (change: Partial<Site>, live: Partial<SiteLive> = {}): SiteLive =>
  testLive({ site: { ...message, site: { ...message.site, ...change } }, ...live });

const only = (...kept: readonly string[]) => {
  const readings = Object.entries(testDecision.belief.readings).filter(([name]) => kept.includes(name));
  const sensors = Object.entries(message.site.sensors).filter(([name]) => kept.includes(name));
  return withSite(
    { sensors: Object.fromEntries(sensors) },
    {
      snapshot: testSnapshot({ belief: { ...testDecision.belief, readings: Object.fromEntries(readings) } }),
    },
  );
};

const everySensor = (): SiteLive => {
  const sensors = channels.map((name) => {
    const unit = sensorUnitNames.find((one) => sensorUnits[one].into === channelMeaning[name].unit) ?? 'C';
    return [name, { topic: 'test/readings', pointer: '/value', unit, factor: 1, offset: 0 }] as const;
  });
  const readings = channels.map((name) => [name, { quality: 'good', value: 1, ageMs: 900 }] as const);
  return withSite(
    { sensors: Object.fromEntries(sensors), plumbing: 'reservoir' },
    {
      snapshot: testSnapshot({ belief: { ...testDecision.belief, readings: Object.fromEntries(readings) } }),
    },
  );
};

const hostile = '<img src=x onerror="document.title=1"> \u202e{{7*7}} =cmd|';
const refused = (text: string) => (monitor: FakeMonitor) =>
  monitor.logFails({ severity: 'error', text: `The log of ${testSite} cannot be opened here: ${text}.` });

const oneRow = (): DayCurves => {
  const whole = testDayCurves('2031-06-20');
  const series = Object.entries(whole.series).map(([name, values]) => [name, values.slice(0, 1)] as const);
  return {
    ...whole,
    atMs: whole.atMs.slice(0, 1),
    series: Object.fromEntries(series),
    pumpFraction: [0],
    heatTodayJ: [0],
    phases: whole.phases.slice(0, 1),
  };
};

/** A day whose log has nothing between its first and its last minutes. */
const hugeGap = (): DayCurves => {
  const whole = testDayCurves('2031-06-20');
  const kept = (_: unknown, row: number) => row < 20 || row > whole.atMs.length - 20;
  const series = Object.entries(whole.series).map(([name, values]) => [name, values.filter(kept)] as const);
  return {
    ...whole,
    atMs: whole.atMs.filter(kept),
    series: Object.fromEntries(series),
    pumpFraction: whole.pumpFraction.filter(kept),
    heatTodayJ: whole.heatTodayJ.filter(kept),
  };
};

const day = (change: Partial<DaySummary>): DaySummary => ({
  ...(testDays.find((one) => one.day === '2031-06-20') as DaySummary),
  ...change,
});
const hours = (count: number) => {
  const firstMs = Date.UTC(2031, 5, 20, 1);
  return day({ firstMs, lastMs: firstMs + count * 3_600_000 - 5000 });
};

const situations: Readonly<Record<string, Situation>> = {
  'the broker gone': {
    bring: (monitor) => monitor.showHost({ brokerConnected: false }),
    says: /lost the broker/,
  },
  'the controller gone': {
    bring: (monitor) => monitor.show(testLive({ status: { schema: 1, state: 'lost' }, snapshotAgeMs: 3e6 })),
    says: /controller is gone without a word/,
  },
  'a controller that said nothing yet': {
    bring: (monitor) => monitor.show(testLive({ snapshot: null, site: null, snapshotAgeMs: null })),
    says: /has told nothing|has not told/,
    on: ['live', 'setpoints', 'site'],
  },
  'clocks apart': {
    bring: (monitor) => monitor.show(testLive({ clockAheadMs: -190_000 })),
    says: /clock is about 3.min behind/,
    on: ['live', 'site'],
  },
  'a locked log': { bring: refused('database is locked'), says: /database is locked/, on: logScreens },
  'a damaged log': {
    bring: refused('database disk image is malformed'),
    says: /image is malformed/,
    on: ['live', 'days'],
  },
  'a log of another version': {
    bring: refused('the log was written by a newer version of this program (layout 9)'),
    says: /newer version/,
    on: ['live', 'days'],
  },
  'a log that cannot be written': {
    bring: (monitor) =>
      monitor.show(
        testLive({ snapshot: { ...testSnapshot(), log: { writable: false, remark: 'the disk is full' } } }),
      ),
    says: /disk is full/,
    on: ['live', 'days', 'site'],
  },
  'a huge gap in the log': {
    bring(monitor) {
      monitor.curvesAre(hugeGap());
      monitor.showDays([day({ coveredFraction: 0.03 })]);
    },
    says: /3 % logged/,
    on: ['days/2031-06-20'],
  },
  'a day of one sample': {
    bring(monitor) {
      monitor.curvesAre(oneRow());
      monitor.showDays([day({ steps: 1, coveredFraction: 0 })]);
    },
    says: /No values were logged|Nothing was logged in these hours/,
    on: ['live', 'days/2031-06-20', 'replay/2031-06-20'],
  },
  'a day of 23 hours': {
    bring: (monitor) => monitor.showDays([hours(23)]),
    says: /20 June/,
    on: ['days/2031-06-20'],
  },
  'a day of 25 hours': {
    bring: (monitor) => monitor.showDays([hours(25)]),
    says: /20 June/,
    on: ['days/2031-06-20'],
  },
  'the least sensors': {
    bring: (monitor) => monitor.show(only('storeBottomC', 'panSheetC')),
    says: /Sheet/,
    on: ['live', 'site'],
  },
  'every sensor': {
    bring: (monitor) => monitor.show(everySensor()),
    says: /Reservoir level/,
    on: ['live', 'site'],
  },
  'hostile text': {
    bring(monitor) {
      const reasons = { ...testDecision.reasons, phase: { ...testDecision.reasons.phase, text: hostile } };
      monitor.show(withSite({ title: hostile }, { snapshot: testSnapshot({ reasons }) }));
      monitor.showHost({ problems: [{ severity: 'warning', text: `A message on ${hostile} came.` }] });
    },
    says: /A message on <img src=x onerror/,
  },
};

const phone = { width: 360, height: 780 };

/** What is amiss with a screen as it stands, in words; nothing when all is well. */
async function faultsOf(page: Page, screen: Screen, { says }: Situation): Promise<string[]> {
  const main = page.locator('main');
  const faults: string[] = [];
  await main.getByText('Loading …', { exact: true }).first().waitFor({ state: 'detached' });
  await main
    .getByText(says)
    .first()
    .waitFor({ timeout: 2000 })
    .catch(() => faults.push(`${screen} does not say ${says}`));
  const text = (await main.textContent()) ?? '';
  if (text.length < 20) faults.push(`${screen} is blank`);
  if (text.includes('fault of its own')) faults.push(`${screen} failed: ${text.slice(0, 200)}`);
  if (/\b(NaN|undefined|Infinity|Invalid Date)\b/.test(text)) faults.push(`${screen} shows no value as one`);
  if (Number(await page.evaluate('document.documentElement.scrollWidth')) > phone.width)
    faults.push(`${screen} scrolls sideways`);
  return faults;
}

test('every screen says what is missing and stays usable, whatever is amiss', async () => {
  const page = await pages.open('#/alarms', { viewport: phone });
  await page.locator('main h1').first().waitFor();
  const faults: string[] = [];
  for (const [name, situation] of Object.entries(situations)) {
    pages.monitor.reset();
    situation.bring(pages.monitor);
    for (const screen of situation.on ?? screens) {
      await page.evaluate(`location.hash = '#/${screen}'`);
      faults.push(...(await faultsOf(page, screen, situation)).map((fault) => `${name}: ${fault}`));
    }
  }
  expect(faults).toEqual([]);
}, 120_000);
