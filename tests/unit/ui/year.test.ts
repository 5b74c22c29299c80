import { describe, expect, test } from 'vitest';
import { contrast, luminance } from '../../../desktop/ui/charts/colours.ts';
import { inkOn } from '../../../desktop/ui/charts/temperature-scale.ts';
import { classWidth, heatClass, heatShades } from '../../../desktop/ui/days/heat-scale.ts';
import { calendarYear, dayByKey, yearsOf } from '../../../desktop/ui/days/year.ts';
import { daySummary } from '../../support/samples.ts';

const summary = (day: string, heatHomeJ: number) => daySummary(day, { heatHomeJ });

describe('shades of heat', () => {
  test.each(['light', 'dark'] as const)('go one way in lightness and carry readable text, %s', (scheme) => {
    const steps = heatShades[scheme].map(luminance);
    const sorted = [...steps].sort((a, b) => a - b);
    expect(scheme === 'dark' ? steps : steps.toReversed()).toEqual(sorted);
    for (const shade of heatShades[scheme]) expect(contrast(shade, inkOn(shade))).toBeGreaterThan(4.5);
  });
  test.each([
    [29, 6],
    [30, 6],
    [30.1, 8],
    [5, 1],
    [0.07, 0.015],
    [0, 1],
  ])('of a best day of %d are %d wide', (best, width) => {
    expect(classWidth(best, 5)).toBeCloseTo(width, 12);
  });
  test('begin with each full width; the best day lies in the last, nothing in none', () => {
    expect(heatClass(0, 6, 5)).toBeUndefined();
    expect(heatClass(-1, 6, 5)).toBeUndefined();
    expect(heatClass(0.1, 6, 5)).toBe(0);
    expect(heatClass(5.99, 6, 5)).toBe(0);
    expect(heatClass(6, 6, 5)).toBe(1);
    expect(heatClass(30, 6, 5)).toBe(4);
  });
});

describe('a year', () => {
  const days = [
    summary('2029-12-31', 9e7),
    summary('2031-01-01', 1e7),
    summary('2031-06-21', 5e7),
    summary('2031-06-22', 5e7),
    summary('2031-12-31', -1e6),
  ];
  test('adds up its own days and names the first of its best ones', () => {
    const year = calendarYear('2031', days);
    expect(year.months).toHaveLength(12);
    expect(year.months[11]?.month).toBe('2031-12');
    expect(year.heatHomeJ).toBe(1.09e8);
    expect(year.loggedDays).toBe(4);
    expect(year.best?.day).toBe('2031-06-21');
  });
  test('without heat has no best day', () => {
    expect(calendarYear('2031', [summary('2031-06-01', 0)]).best).toBeUndefined();
  });
  test('can be chosen from the first logged to the last, without holes', () => {
    expect(yearsOf(days)).toEqual(['2029', '2030', '2031']);
    expect(yearsOf([])).toEqual([]);
  });
});

describe('keys in the calendar', () => {
  const logged = ['2031-05-31', '2031-06-01', '2031-06-08', '2031-06-20'];
  test.each([
    ['2031-06-01', 'ArrowLeft', '2031-05-31'],
    ['2031-05-31', 'ArrowRight', '2031-06-01'],
    ['2031-06-01', 'ArrowRight', '2031-06-08'],
    ['2031-06-01', 'ArrowDown', '2031-06-08'],
    ['2031-06-08', 'ArrowUp', '2031-06-01'],
    ['2031-06-08', 'ArrowDown', '2031-06-20'],
    ['2031-06-08', 'Home', '2031-05-31'],
    ['2031-06-01', 'End', '2031-06-20'],
    ['2031-06-20', 'ArrowRight', undefined],
    ['2031-05-31', 'ArrowUp', undefined],
    ['2031-05-31', 'Enter', undefined],
  ])('from %s %s leads to %s', (from, key, to) => {
    expect(dayByKey(logged, from, key)).toBe(to);
  });
});
