import { describe, expect, test } from 'vitest';
import { learntMeaning } from '../../../controller/engine/learnt.ts';
import { numberFormats } from '../../../desktop/ui/format/numbers.ts';
import { timeFormats } from '../../../desktop/ui/format/times.ts';
import { learntRows } from '../../../desktop/ui/site/learnt-rows.ts';
import { outputRows } from '../../../desktop/ui/site/output-rows.ts';
import { ageText, fittedChannels, sourceText, viewRaw } from '../../../desktop/ui/site/sensor-rows.ts';
import { siteFacts } from '../../../desktop/ui/site/site-facts.ts';
import { en } from '../../../desktop/ui/text/en.ts';
import { cautionCodes } from '../../../shared-types/cautions.ts';
import { channels } from '../../../shared-types/channels.ts';
import { type Sensor, type Site, siteSchema } from '../../../shared-types/site.ts';
import { testSiteMessage } from '../../support/fake-monitor/site.ts';

const times = timeFormats('UTC', 'en-GB');
const numbers = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en-GB');
const { site } = testSiteMessage();
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('a sensor', () => {
  const view = (...[raw, lagMs = 0]: [Parameters<typeof viewRaw>[1], number?]) => {
    const { value, age } = viewRaw('panOutletC', raw, numbers, lagMs);
    return [plain(value), plain(age)];
  };
  test('shows what came in with its age, that of the snapshot included', () => {
    expect(view({ value: 41.26, ageMs: 4000 })).toEqual(['41.3 °C', '4 s']);
    expect(view({ value: 41.26, ageMs: 4000 }, 60_000)).toEqual(['41.3 °C', '1 min']);
  });
  test('says what came in instead of a number', () => {
    expect(view({ value: 999, ageMs: 0, fault: 'open-circuit' })).toEqual(['open circuit', '0 s']);
    expect(view({ value: null, ageMs: 0 })).toEqual(['no number', '0 s']);
    expect(view(undefined)).toEqual(['never heard', '']);
  });
  test('has the age of its judged reading where nobody tells what came in, and none once it failed', () => {
    expect(plain(ageText({ quality: 'good', value: 1, ageMs: 2000 }, 1000))).toBe('3 s');
    expect(ageText({ quality: 'failed', cause: 'stale' }, 1000)).toBe('');
  });
  test('says where its value comes from and what is done with it', () => {
    const sensor: Sensor = { topic: 'roof/t', pointer: '/a', unit: 'F', factor: 1, offset: 0 };
    expect(sourceText(sensor)).toBe('roof/t /a, sent in °F');
    expect(sourceText({ topic: 'roof/t', unit: 'F', factor: 0.1, offset: -2 })).toBe(
      'roof/t, sent in °F, times 0.1, plus -2',
    );
    expect(sourceText({ key: 't1', unit: 'C', factor: 1, offset: 0 })).toBe('t1, sent in °C');
  });
});

describe('what is fitted', () => {
  test('and what is not make up every channel; a reservoir’s only where there is one', () => {
    const { fitted, missing } = fittedChannels(site);
    expect(fitted).toHaveLength(Object.keys(site.sensors).length);
    expect(missing).toEqual(['longWaveWM2', 'panLevelMm', 'storeLevelMm']);
    const withReservoir = fittedChannels({ ...site, plumbing: 'reservoir' });
    expect([...withReservoir.fitted, ...withReservoir.missing].toSorted()).toEqual([...channels].toSorted());
  });
});

describe('the outputs', () => {
  const told = { pumpFraction: 0.6, drainOpen: false, drainPumpOn: true, exchangerPumpOn: true };
  const rows = (change: Partial<Site>, feedback: Parameters<typeof outputRows>[2] = null, outputs = told) =>
    outputRows({ ...site, ...change }, outputs, feedback, numbers).map(
      ({ name, commanded, says, follows }) => [name, plain(commanded), plain(says), follows],
    );
  test('are those that the site has; what nobody says is not judged', () => {
    expect(rows({})).toEqual([
      ['pump', '60 %', 'does not say', null],
      ['drain', 'with power, closed', 'does not say', null],
    ]);
    expect(rows({ drain: 'drain-pump', plumbing: 'reservoir' })).toEqual([
      ['pump', '60 %', 'does not say', null],
      ['drainPump', 'on', 'does not say', null],
      ['exchangerPump', 'on', 'does not say', null],
    ]);
    expect(rows({ drain: 'pump-stop' }).map(([name]) => name)).toEqual(['pump']);
    const heatDump = { conductanceWK: 300 };
    const row = (heatDumpOn: boolean) =>
      rows({ heatDump }, null, { ...told, heatDumpOn } as typeof told).at(-1);
    expect(row(true)).toEqual(['heatDump', 'on', 'does not say', null]);
    expect(row(false)).toEqual(['heatDump', 'off', 'does not say', null]);
  });
  test('follow when the device says the same', () => {
    expect(rows({}, { pumpFraction: 0.5, drainOpen: false, ageMs: 0 })).toEqual([
      ['pump', '60 %', '50 %', true],
      ['drain', 'with power, closed', 'closed', true],
    ]);
    const off = { ...told, pumpFraction: 0, drainOpen: true };
    expect(rows({}, { pumpFraction: 0, drainOpen: true, ageMs: 0 }, off)).toEqual([
      ['pump', 'off', 'off', true],
      ['drain', 'without power, open', 'open', true],
    ]);
  });
  test('differ when it says otherwise', () => {
    expect(
      rows({}, { pumpFraction: 0, drainOpen: true, ageMs: 0 }).map(([, , , follows]) => follows),
    ).toEqual([false, false]);
    expect(rows({}, { pumpFraction: 1, drainOpen: null, ageMs: 0 })[1]?.[3]).toBeNull();
  });
});

describe('what was learnt', () => {
  test('has words and a unit for every name that the control logic uses', () => {
    expect(Object.keys(en.learnt).toSorted()).toEqual(Object.keys(learntMeaning).toSorted());
  });
  test('is shown in its unit, each as its name ends', () => {
    const learnt = {
      fullFlowLMin: 18.53,
      fullPowerW: 44.4,
      primingS: 90,
      restContactKM2W: 0.00834,
      reservoirDropMm: 120,
      outletOffsetK: 0.31,
    };
    expect(learntRows(learnt, numbers).map(([, value]) => plain(value))).toEqual([
      '18.5 L/min',
      '44 W',
      '2 min',
      '0.0083 K m²/W',
      '120 mm',
      '0.3 K',
    ]);
  });
  test('stands in the order of the table, whatever came first; what is not known there comes last', () => {
    const learnt = { oddThing: 1, outletOffsetSdK: 0.2, fullFlowLMin: 18, outletOffsetK: 0.3 };
    expect(learntRows(learnt, numbers).map(([title]) => title)).toEqual([
      en.learnt['fullFlowLMin']?.title,
      en.learnt['outletOffsetK']?.title,
      en.learnt['outletOffsetSdK']?.title,
      'oddThing',
    ]);
  });
  test('stands under its own name when this version does not know it', () => {
    expect(learntRows({ toString: 3 } as never, numbers)).toEqual([['toString', '3.000']]);
  });
});

describe('the facts of the site file', () => {
  test('carry every caution once, each where it belongs', () => {
    const groups = siteFacts(site, numbers, times);
    expect(groups.flatMap(({ cautions }) => cautions).toSorted()).toEqual([...cautionCodes].toSorted());
  });
  test('are told in the chosen units, with the water that the pan holds', () => {
    const facts = Object.fromEntries(siteFacts(site, numbers, times).flatMap((group) => group.facts));
    expect(plain(facts[en.site.facts.rows.volume] ?? '')).toBe('460 L');
    expect(plain(facts[en.site.facts.rows.linerLimit] ?? '')).toBe('80.0 °C');
    expect(facts[en.site.facts.rows.frost]).toBe('all year');
  });
  test('tell of a heat dump only where there is one', () => {
    const of = (at: Site) =>
      Object.fromEntries(siteFacts(at, numbers, times).flatMap((group) => group.facts));
    const title = en.site.facts.rows.heatDump;
    expect(of(site)).not.toHaveProperty(title);
    expect(plain(of({ ...site, heatDump: { conductanceWK: 300 } })[title] ?? '')).toBe('300 W/K');
  });
  test('name the frost season by month and day', () => {
    const winter = siteSchema.parse({ ...site, frostSeason: { from: '10-15', to: '04-30' } });
    const facts = Object.fromEntries(siteFacts(winter, numbers, times).flatMap((group) => group.facts));
    expect(facts[en.site.facts.rows.frost]).toBe('15 October to 30 April');
  });
});
