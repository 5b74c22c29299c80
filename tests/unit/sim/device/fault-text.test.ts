import { describe, expect, it } from 'vitest';
import { faultList, parseFaultWish } from '../../../../sim/device/fault-text.ts';
import { faultNames } from '../../../../sim/plant/faults.ts';

describe('a fault on the command line', () => {
  const good = [
    ['pump-dead', { name: 'pump-dead', size: 0 }, null],
    ['sensor-open:panOutletC', { name: 'sensor-open', channel: 'panOutletC', size: 0 }, null],
    ['sensor-offset:storeTopC=-2.5', { name: 'sensor-offset', channel: 'storeTopC', size: -2.5 }, null],
    ['sensor-offset:storeTopC', { name: 'sensor-offset', channel: 'storeTopC', size: 5 }, null],
    ['half-flow@13:45=0.25', { name: 'half-flow', size: 0.25 }, 825],
    ['device-silent@00:00', { name: 'device-silent', size: 0 }, 0],
  ] as const;
  it.each(good)('%s', (text, fault, minuteOfDay) => {
    expect(parseFaultWish(text)).toEqual({ ok: true, value: { fault, minuteOfDay } });
  });

  const bad = [
    ['', 'the form is'],
    ['pump-dead@25:00', 'the form is'],
    ['pump-dead=', 'the form is'],
    ['pump-gone', 'no fault is called'],
    ['toString', 'the form is'],
    ['constructor', 'no fault is called'],
    ['sensor-open', 'needs a channel'],
    ['sensor-open:kettleC', 'no channel is called'],
    ['pump-dead:panOutletC', 'takes no channel'],
    ['pump-dead=3', 'takes no size'],
    ['half-flow=1.5', '0 to 1'],
  ] as const;
  it.each(bad)('refuses %j', (text, why) => {
    const parsed = parseFaultWish(text);
    expect(parsed.ok ? 'taken' : parsed.why).toContain(why);
  });

  it('lists every fault', () => {
    expect(faultList().map((line) => line.split(/[ :]/)[0])).toEqual([...faultNames]);
  });
});
