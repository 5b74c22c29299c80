import { describe, expect, it } from 'vitest';
import { readSpanText } from '../../../../sim/replay/span-text.ts';

const kept = { days: ['2031-06-20', '2031-06-21', '2031-06-23'], timeZone: 'Europe/Lisbon' };
const utc = (text: string) => Date.parse(`${text}Z`);

describe('a span as people write it', () => {
  it.each([
    ['latest', { day: '2031-06-23', lastDay: '2031-06-23' }],
    ['2031-06-21', { day: '2031-06-21', lastDay: '2031-06-21' }],
    ['2031-06-21..2031-06-30', { day: '2031-06-21', lastDay: '2031-06-30' }],
    ['2031-06-22..2031-06-23', { day: '2031-06-22', lastDay: '2031-06-23' }],
    // Lisbon is an hour ahead in summer.
    [
      '2031-06-21T09:00..2031-06-21T12:30',
      { fromMs: utc('2031-06-21T08:00'), toMs: utc('2031-06-21T11:30') },
    ],
    [
      '2031-06-21T09:00Z..2031-06-21T12:30+02:00',
      { fromMs: utc('2031-06-21T09:00'), toMs: utc('2031-06-21T10:30') },
    ],
    // The hour that the clocks show twice counts whole.
    [
      '2031-10-26T01:30..2031-10-26T01:30',
      { fromMs: utc('2031-10-26T00:30'), toMs: utc('2031-10-26T01:30') },
    ],
  ])('%s', (text, span) => {
    expect(readSpanText(text, kept)).toEqual({ ok: true, span });
  });

  it.each([
    ['2031-06-22', "nothing of '2031-06-22' is kept; there are: 2031-06-20, 2031-06-21, 2031-06-23"],
    ['2031-07-01..2031-07-04', "nothing of '2031-07-01..2031-07-04' is kept"],
    ['2031-06-19..2031-06-19', 'is kept'],
    ['yesterday', "nothing of 'yesterday' is kept"],
    ['2031-06-21T09:00', "nothing of '2031-06-21T09:00' is kept"],
    ['2031-06-21..2031-06-21T09:00', 'is kept'],
    ['2031-06-21T09:00..later', 'is kept'],
    ['2031-06-23..2031-06-20', 'ends before it begins'],
    ['2031-06-21T12:00..2031-06-21T12:00', 'ends before it begins'],
    // The clocks skip that hour.
    ['2031-03-30T01:30..2031-03-30T04:00', 'is kept'],
    ['2031-06-20..', 'is no span'],
    ['..2031-06-20', 'is no span'],
    ['2031-06-20..2031-06-21..2031-06-23', 'is no span'],
    ['', 'is no span'],
  ])('refuses %j', (text, words) => {
    const read = readSpanText(text, kept);
    expect(read.ok ? '' : read.why).toContain(words);
  });

  it('names the first and the last of many days', () => {
    const days = Array.from({ length: 13 }, (_, index) => `2031-06-${10 + index}`);
    const why = (count: number) => {
      const read = readSpanText('2030-01-01', { ...kept, days: days.slice(0, count) });
      return read.ok ? '' : read.why;
    };
    expect(why(12)).toContain('2031-06-20, 2031-06-21');
    expect(why(13)).toContain('13 days from 2031-06-10 to 2031-06-22');
  });

  it('knows no zone that is none', () => {
    expect(readSpanText('2031-06-21T09:00..2031-06-21T12:30', { ...kept, timeZone: 'Nowhere' }).ok).toBe(
      false,
    );
  });

  it('tells an empty log', () => {
    expect(readSpanText('latest', { ...kept, days: [] })).toEqual({ ok: false, why: 'the log holds no day' });
  });
});
