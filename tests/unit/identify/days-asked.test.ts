import { describe, expect, it } from 'vitest';
import { daysAsked } from '../../../sim/identify/days-asked.ts';

const kept = ['2031-06-19', '2031-06-20', '2031-06-22'];

describe('days that are asked for', () => {
  it.each([
    [['2031-06-20'], ['2031-06-20']],
    [['latest'], ['2031-06-22']],
    [['2031-06-20..2031-06-22'], ['2031-06-20', '2031-06-22']],
    [
      ['2031-06-01..2031-06-19', '2031-06-19', 'latest'],
      ['2031-06-19', '2031-06-22'],
    ],
    [
      ['2031-06-22', '2031-06-19'],
      ['2031-06-19', '2031-06-22'],
    ],
  ])('%s are %s', (asked, days) => {
    expect(daysAsked(asked, kept)).toEqual({ ok: true, days });
  });

  it('says what is kept when nothing of it is', () => {
    expect(daysAsked(['2031-06-21'], kept)).toEqual({
      ok: false,
      why: "nothing of '2031-06-21' is kept; there are: 2031-06-19, 2031-06-20, 2031-06-22",
    });
  });

  it.each([
    ['2031-06-19..2031-06-20..2031-06-22', 'is no span'],
    ['2031-06-20..', 'is no span'],
    ['..2031-06-20', 'is no span'],
    ['2031-06-20..zzz', "nothing of '2031-06-20..zzz' is kept"],
    ['2031-06-22..2031-06-19', 'ends before it begins'],
    ['2031-06-20T09:00..2031-06-20T12:00', 'is no span of whole days: write DAY or DAY..DAY'],
  ])('refuses %s, whatever else is asked for', (text, why) => {
    expect(daysAsked(['2031-06-19', text], kept)).toEqual({ ok: false, why: expect.stringContaining(why) });
  });

  it('says that a log is empty', () => {
    expect(daysAsked(['latest'], [])).toEqual({ ok: false, why: 'the log holds no day' });
  });
});
