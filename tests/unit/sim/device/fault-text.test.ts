import { describe, expect, it } from 'vitest';
import { faultList, misfitOf, parseFaultWish } from '../../../../sim/device/fault-text.ts';
import { declarationOf, faultNames } from '../../../../sim/plant/faults.ts';
import { demoContent, serialContent, siteOf } from '../../../support/sites.ts';

describe('a fault on the command line', () => {
  const day = (minuteOfDay: number) => ({ date: null, minuteOfDay });
  const good = [
    ['pump-dead', { name: 'pump-dead', size: 0 }, null, null],
    ['sensor-open:panOutletC', { name: 'sensor-open', channel: 'panOutletC', size: 0 }, null, null],
    ['sensor-offset:storeTopC=-2.5', { name: 'sensor-offset', channel: 'storeTopC', size: -2.5 }, null, null],
    ['sensor-offset:storeTopC', { name: 'sensor-offset', channel: 'storeTopC', size: 5 }, null, null],
    ['half-flow@13:45=0.25', { name: 'half-flow', size: 0.25 }, day(825), null],
    ['device-silent@00:00', { name: 'device-silent', size: 0 }, day(0), null],
    ['power-cut@22:00~06:30', { name: 'power-cut', size: 0 }, day(1320), day(390)],
    ['pan-leak~06:30=12', { name: 'pan-leak', size: 12 }, null, day(390)],
    [
      'air-pocket@2031-06-21T14:00~2031-06-22T09:15=0.5',
      { name: 'air-pocket', size: 0.5 },
      { date: '2031-06-21', minuteOfDay: 840 },
      { date: '2031-06-22', minuteOfDay: 555 },
    ],
    [
      'sensors-swapped:panOutletC/storeBottomC',
      { name: 'sensors-swapped', channel: 'panOutletC', other: 'storeBottomC', size: 0 },
      null,
      null,
    ],
  ] as const;
  it.each(good)('%s', (text, fault, from, until) => {
    expect(parseFaultWish(text)).toEqual({ ok: true, value: { fault, from, until } });
  });

  const bad = [
    ['', 'the form is'],
    ['pump-dead@25:00', 'a time is'],
    ['pump-dead@2031-02-30T10:00', 'a time is'],
    ['pump-dead~9:00', 'a time is'],
    ['pump-dead@2031-06-21T14:00~2031-06-21T14:00', 'ends after'],
    ['pump-dead=', 'the form is'],
    ['pump-gone', 'no fault is called'],
    ['toString', 'the form is'],
    ['constructor', 'no fault is called'],
    ['sensor-open', 'needs a channel'],
    ['sensor-open:kettleC', 'no channel is called'],
    ['sensor-open:panOutletC/storeTopC', 'takes one channel'],
    ['sensors-swapped:panOutletC', 'needs a second channel'],
    ['sensors-swapped:panOutletC/kettleC', 'no channel is called'],
    ['sensors-swapped:panOutletC/panOutletC', 'two channels of one unit'],
    ['sensors-swapped:panOutletC/flowLMin', 'two channels of one unit'],
    ['pump-dead:panOutletC', 'takes no channel'],
    ['pump-dead=3', 'takes no size'],
    ['half-flow=1.5', '0 to 1'],
  ] as const;
  it.each(bad)('refuses %j', (text, why) => {
    const parsed = parseFaultWish(text);
    expect(parsed.ok ? 'taken' : parsed.why).toContain(why);
  });

  const forms = { sensor: ':panOutletC', 'two-sensors': ':panOutletC/storeTopC', part: '', device: '' };
  const sized = faultNames.filter((name) => declarationOf(name).size !== undefined);
  it.each(sized)('%s takes the ends of its range and nothing beyond', (name) => {
    const { on, size } = declarationOf(name);
    if (size === undefined) throw new Error('chosen for having one');
    const wish = (value: number) => parseFaultWish(`${name}${forms[on]}=${value}`);
    expect([wish(size.least).ok, wish(size.most).ok]).toEqual([true, true]);
    const range = `${size.least} to ${size.most}`;
    expect(wish(size.least - 0.5)).toMatchObject({ ok: false, why: expect.stringContaining(range) });
    expect(wish(size.most + 0.5)).toMatchObject({ ok: false, why: expect.stringContaining(range) });
  });

  it('lists every fault with its range', () => {
    expect(faultList().map((line) => line.split(/[ :]/)[0])).toEqual([...faultNames]);
    expect(faultList().find((line) => line.startsWith('pan-leak'))).toContain(
      '0 to 1000 (L/h), 5 unless said',
    );
  });
});

describe('a fault of a site', () => {
  const demo = siteOf(demoContent());
  const misfit = (text: string, site = demo, serial = false) => {
    const parsed = parseFaultWish(text);
    if (!parsed.ok) throw new Error(parsed.why);
    return misfitOf(parsed.value.fault, site, serial);
  };

  it('is of a sensor that it has', () => {
    expect(misfit('sensor-open:panOutletC')).toBeUndefined();
    expect(misfit('sensor-open:reservoirC')).toContain('no sensor reservoirC');
    expect(misfit('sensors-swapped:panOutletC/reservoirC')).toContain('no sensor reservoirC');
  });

  it('is a silent topic only where there are topics', () => {
    expect(misfit('topic-silent:panOutletC')).toBeUndefined();
    const serial = siteOf(serialContent('/dev/null'));
    expect(misfit('topic-silent:panOutletC', serial, true)).toContain('serial line');
    expect(misfit('power-cut', serial, true)).toBeUndefined();
  });

  it('is a short reservoir only where there is one', () => {
    expect(misfit('reservoir-short')).toContain('no drain-back reservoir');
    expect(misfit('reservoir-short', siteOf(demoContent({ plumbing: 'reservoir' })))).toBeUndefined();
  });
});
