import { describe, expect, it } from 'vitest';
import { instantOf, parseMoment, parseStart } from '../../../../sim/device/local-moment.ts';

const at = (text: string, afterMs: number, zone: string) => {
  const moment = parseMoment(text);
  if (moment === undefined) throw new Error(`${text} is no moment`);
  return new Date(instantOf(moment, afterMs, zone)).toISOString();
};

describe('a local moment', () => {
  const noonMs = Date.UTC(2031, 5, 21, 12, 0, 30);
  const rows = [
    ['later today', '13:45', 'Etc/UTC', '2031-06-21T13:45:00.000Z'],
    ['tomorrow when it is past', '03:00', 'Etc/UTC', '2031-06-22T03:00:00.000Z'],
    ['the minute that runs', '12:00', 'Etc/UTC', '2031-06-21T12:00:00.000Z'],
    ['by the clocks of the zone', '13:00', 'Asia/Kolkata', '2031-06-22T07:30:00.000Z'],
    ['in summer time', '18:00', 'Atlantic/Azores', '2031-06-21T18:00:00.000Z'],
    ['on a date of its own, past or not', '2031-01-02T18:00', 'Atlantic/Azores', '2031-01-02T19:00:00.000Z'],
    [
      'on the day that the clocks change, after it',
      '2031-03-30T12:00',
      'Atlantic/Azores',
      '2031-03-30T12:00:00.000Z',
    ],
    ['before the change of that day', '2031-03-30T00:00', 'Europe/Berlin', '2031-03-29T23:00:00.000Z'],
    ['as much later as a skipped minute is', '2031-03-30T02:30', 'Europe/Berlin', '2031-03-30T01:30:00.000Z'],
    [
      'the first of a minute that comes twice',
      '2031-10-26T02:30',
      'Europe/Berlin',
      '2031-10-26T00:30:00.000Z',
    ],
  ] as const;
  it.each(rows)('%s', (_, text, zone, expected) => {
    expect(at(text, noonMs, zone)).toBe(expected);
  });

  it('has its next minute on the day that the clocks change, too', () => {
    expect(at('12:00', Date.UTC(2031, 2, 29, 18), 'Europe/Berlin')).toBe('2031-03-30T10:00:00.000Z');
  });

  it.each(['', '1:30', '24:00', '12:60', '2031-02-30T10:00', '2031-13-01T10:00', '2031-06-21', '12:00Z'])(
    'is not %j',
    (text) => {
      expect(parseMoment(text)).toBeUndefined();
    },
  );

  it('begins a day at midnight, or at its time', () => {
    expect(parseStart('2031-06-21')).toEqual({ date: '2031-06-21', minuteOfDay: 0 });
    expect(parseStart('2031-06-21T08:30')).toEqual({ date: '2031-06-21', minuteOfDay: 510 });
    expect([parseStart('2031-02-29'), parseStart('08:30')]).toEqual([undefined, undefined]);
  });
});
