import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberFormats } from '../../../desktop/ui/format/numbers.ts';
import { changedLines, changeText, sameSettings } from '../../../desktop/ui/replay/changed-settings.ts';
import { besideSize, significant } from '../../../desktop/ui/replay/fit/significant.ts';
import { absorbedOutline } from '../../../desktop/ui/replay/other/absorbed-outline.ts';
import { absorbedJM2, absorbedRows } from '../../../desktop/ui/replay/other/absorbed-rows.ts';
import { bandBars } from '../../../desktop/ui/replay/other/band-bar.ts';
import { comparisonTable } from '../../../desktop/ui/replay/other/comparison-csv.ts';
import { gainText, sideOf, signedRange, signedText } from '../../../desktop/ui/replay/other/gain.ts';
import { sideRows } from '../../../desktop/ui/replay/other/side-rows.ts';
import { spanPieces } from '../../../desktop/ui/replay/other/span-pieces.ts';
import { trialNames } from '../../../desktop/ui/replay/other/trial-names.ts';
import { worldLines } from '../../../desktop/ui/replay/other/world-origins.ts';
import { settingOptions } from '../../../desktop/ui/replay/setting-options.ts';
import { defaultSettings, settingNames } from '../../../shared-types/settings.ts';
import { comparisonSchema } from '../../../shared-types/tuning.ts';
import { testComparison } from '../../support/fake-monitor/tuning.ts';

const units = { temperature: 'C', heat: 'kWh' } as const;
const numbers = numberFormats(units, 'en');
const kWh = 3.6e6;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const band = (value: number, low: number, high: number) => ({ value, low, high });
const tried = { ...defaultSettings, startDifferenceK: 2.5 };
const comparison = testComparison('2031-06-20', tried, true);

test('the made-up comparison is one that the host could send', () => {
  expect(comparisonSchema.safeParse(comparison).success).toBe(true);
});

describe('light that the pan took up', () => {
  const { absorbed } = comparison;
  if (absorbed === null) throw new Error('the made-up comparison has some');

  test('is told by the half hour as long as there is any, with bars on one scale from nought', () => {
    const rows = absorbedRows(absorbed, numbers);
    expect(rows).toHaveLength(23);
    expect(rows[0]?.fromMs).toBe(absorbed.fromMs + 13 * absorbed.stepMs);
    expect(rows[0]?.toMs).toBe(absorbed.fromMs + 14 * absorbed.stepMs);
    const noon = rows[11]?.shown;
    expect(plain(`${noon?.value} ${noon?.band}`)).toBe('700 W/m² 560 W/m² to 840 W/m²');
    expect(noon?.bar?.start).toBeCloseTo(560 / 840, 9);
    expect(noon?.bar?.mark).toBeCloseTo(700 / 840, 9);
    expect(noon?.bar?.length).toBeCloseTo(280 / 840, 9);
  });

  test('is nothing in the dark', () => {
    const dark = absorbed.valueWM2.map(() => 0);
    expect(absorbedRows({ ...absorbed, valueWM2: dark, lowWM2: dark, highWM2: dark }, numbers)).toEqual([]);
  });

  test('is drawn from nought to whole hundreds, each step in its middle', () => {
    const box = { left: 10, top: 20, width: 480, height: 90 };
    const { band, line, topWM2, brightest, hours } = absorbedOutline(absorbed, box);
    expect(topWM2).toBe(900);
    expect(line.split(' ')[24]).toBe(`255.0,${(20 + 90 * (1 - 700 / 900)).toFixed(1)}`);
    expect(band.split(' ')).toHaveLength(96);
    expect(band.split(' ')[24]).toBe(`255.0,${(20 + 90 * (1 - 840 / 900)).toFixed(1)}`);
    expect(band.split(' ').at(-25)).toBe(`255.0,${(20 + 90 * (1 - 560 / 900)).toFixed(1)}`);
    expect(brightest).toEqual({ atMs: absorbed.fromMs + 24.5 * absorbed.stepMs, valueWM2: 700 });
    expect(hours.map(({ x }) => x)).toEqual([130, 250, 370]);
  });

  test('of a day without any is drawn on a scale of its own', () => {
    const dark = absorbed.valueWM2.map(() => 0);
    const { topWM2, line } = absorbedOutline(
      { ...absorbed, valueWM2: dark, lowWM2: dark, highWM2: dark },
      { left: 0, top: 0, width: 48, height: 10 },
    );
    expect(topWM2).toBe(100);
    expect(line.split(' ')[0]).toBe('0.5,10.0');
  });

  test('is summed up over the day', () => {
    // Twelve hours of a half sine with its top at 700 W/m2, by the trapezium.
    expect(absorbedJM2(absorbed) / kWh).toBeCloseTo((0.7 * 24) / Math.PI, 1);
  });
});

describe('what may be said of a gain', () => {
  test.each([
    [0.1, 2, 'more'],
    [0, 2, 'unclear'],
    [-1, 0, 'unclear'],
    [-2, -0.1, 'less'],
  ] as const)('a band from %d to %d is %s', (low, high, side) => {
    expect(sideOf({ value: (low + high) / 2, low, high })).toBe(side);
  });

  test.each([
    [band(1.1 * kWh, 0.7 * kWh, 1.5 * kWh), 'brought 1.10 kWh more heat home (0.70 kWh to 1.50 kWh)'],
    [band(-1.1 * kWh, -1.5 * kWh, -0.7 * kWh), 'brought 1.10 kWh less heat home (0.70 kWh to 1.50 kWh)'],
    [
      band(0.1 * kWh, -0.2 * kWh, 0.4 * kWh),
      'brings more heat home or less cannot be told: 0.20 kWh less to 0.40 kWh more',
    ],
  ])('%j in words', (gain, words) => {
    expect(plain(gainText(gain, false, numbers))).toContain(words);
  });

  test('the same setpoints gain nothing, whatever the numbers say', () => {
    expect(gainText(band(5, 4, 6), true, numbers)).toContain('both sides are the same');
  });

  test.each([
    [2, '2 more'],
    [-2, '2 less'],
    [0, 'equal'],
    [0.4, 'equal'],
    [-0.4, 'equal'],
  ])('an amount of %d is %s', (value, words) => {
    expect(signedText(value, (amount) => numbers.count(amount))).toBe(words);
  });

  test('another word for less may be given, and digits of any script are read', () => {
    expect(signedText(-2, String, (amount) => `${amount} fewer`)).toBe('2 fewer');
    const arabic = (amount: number) => new Intl.NumberFormat('ar-EG').format(amount);
    expect(signedText(0.0001, arabic)).toBe('equal');
    expect(signedText(3, arabic)).toBe(`${arabic(3)} more`);
  });

  test.each([
    [1, 2, '1 to 2 more'],
    [-2, -1, '1 to 2 less'],
    [-1, 2, '1 less to 2 more'],
    [0, 2, 'equal to 2 more'],
  ])('a range from %d to %d is %s', (low, high, words) => {
    expect(signedRange(low, high, String)).toBe(words);
  });
});

describe('bars of bands', () => {
  test('lie within the scale of their row, with the mark within the bar', () => {
    const estimate = fc
      .tuple(
        fc.integer({ min: -5000, max: 5000 }),
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 0, max: 900 }),
      )
      .map(([value, below, above]) => band(value / 10, (value - below) / 10, (value + above) / 10));
    fc.assert(
      fc.property(fc.array(estimate, { minLength: 1, maxLength: 3 }), (estimates) => {
        for (const { start, length, mark } of bandBars(estimates) ?? []) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(start + length).toBeLessThanOrEqual(1 + 1e-9);
          expect(mark).toBeGreaterThanOrEqual(start - 1e-9);
          expect(mark).toBeLessThanOrEqual(start + length + 1e-9);
        }
      }),
    );
  });

  test('the least end stands at 0 and the greatest at 1; without any width there is none', () => {
    expect(bandBars([band(2, 1, 3), band(4, 4, 5)])).toEqual([
      { start: 0, length: 0.5, mark: 0.25 },
      { start: 0.75, length: 0.25, mark: 0.75 },
    ]);
    expect(bandBars([band(2, 2, 2), band(2, 2, 2)])).toBeUndefined();
  });
});

describe('both sides beside each other', () => {
  const rows = sideRows(comparison, numbers);
  const row = (title: string) => rows.find((one) => one.title.startsWith(title));

  test('heat has the log, both sides with their bands, and the narrower band of the difference', () => {
    const heat = row('Net heat home');
    expect(plain(heat?.logged ?? '')).toBe('25.2 kWh');
    expect(plain(heat?.base?.band ?? '')).toBe('23.3 kWh to 26.3 kWh');
    expect(plain(heat?.tried?.value ?? '')).toBe('25.9 kWh');
    expect(plain(heat?.difference ?? '')).toBe('1.10 kWh more (0.70 kWh to 1.50 kWh more)');
  });

  test('the share of the best possible stands there when it was asked for and makes sense', () => {
    expect(row('Share')).toMatchObject({ logged: '91 %', base: { value: '90 %' }, tried: { value: '94 %' } });
    for (const bestPossibleJ of [null, 0, -1])
      expect(
        sideRows({ ...comparison, bestPossibleJ }, numbers).some((one) => one.title.startsWith('Share')),
      ).toBe(false);
  });

  test('counts are fewer, and a band without a width is none', () => {
    expect(row('Pump starts')).toMatchObject({ difference: '2 fewer', base: { value: '5', band: '4 to 6' } });
    expect(row('Fills')).toMatchObject({ difference: 'equal', base: { value: '1', band: null, bar: null } });
  });

  test('a count that samples made uneven is shown whole', () => {
    const uneven = { ...comparison.base, starts: band(4.6, 4, 5.4) };
    const starts = sideRows({ ...comparison, base: uneven }, numbers).find(
      (one) => one.title === 'Pump starts',
    );
    expect(starts?.base).toMatchObject({ value: '5', band: '4 to 5' });
  });

  test('a value at the end of its band still has one', () => {
    const base = { ...comparison.base, fills: band(1, 1, 2) };
    const fills = sideRows({ ...comparison, base }, numbers).find((one) => one.title === 'Fills');
    expect(fills?.base?.band).toBe('1 to 2');
  });

  test('what is not known on one side has no difference, and the other side keeps its bar', () => {
    const liner = row('Nearest to the liner');
    expect(liner).toMatchObject({ logged: null, tried: null, difference: null });
    expect(liner?.base?.bar).toEqual({ start: 0, length: 1, mark: 0.5 });
    const none = { ...comparison.base, aboveFreezingK: null };
    const both = sideRows({ ...comparison, base: none, tried: none }, numbers);
    expect(both.find(({ title }) => title.startsWith('Nearest to frost'))).toMatchObject({
      base: null,
      tried: null,
      difference: null,
    });
  });
});

describe('where the log cannot vouch', () => {
  const window = { fromMs: 0, toMs: 100 };
  test('spans that overlap or touch are one piece, and what lies outside is cut', () => {
    const spans = [
      { fromMs: 40, toMs: 50 },
      { fromMs: -10, toMs: 10 },
      { fromMs: 50, toMs: 60 },
      { fromMs: 42, toMs: 45 },
      { fromMs: 61, toMs: 200 },
      { fromMs: 100, toMs: 110 },
    ];
    expect(spanPieces(spans, window)).toEqual([
      { start: 0, length: 0.1 },
      { start: 0.4, length: 0.2 },
      { start: 0.61, length: 0.39 },
    ]);
  });
  test('no span is no piece', () => {
    expect(spanPieces([], window)).toEqual([]);
  });
});

describe('setpoints in words', () => {
  test('those that differ are told from and to', () => {
    expect(changedLines(defaultSettings, tried, 'C').map(plain)).toEqual(['Start difference: 1 K → 2.5 K']);
    expect([sameSettings(tried, tried), sameSettings(tried, defaultSettings)]).toEqual([true, false]);
  });
  test('a change is told in one line, in the units of the screen', () => {
    const change = { startDifferenceK: 2, storeLimitC: 50 };
    expect(plain(changeText(change, 'C', 'none'))).toBe('Start difference 2 K, Store limit 50 °C');
    expect(plain(changeText(change, 'F', 'none'))).toBe('Start difference 3.6 °F, Store limit 122 °F');
    expect(changeText({}, 'C', 'none')).toBe('none');
  });
  test('those to be tried are the usual ones, the changed ones and those asked for, in the order of the table', () => {
    const names = trialNames(['storeLimitC'], ['startDelayS']);
    expect(names).toEqual(settingNames.filter((name) => names.includes(name)));
    expect(names).toEqual(expect.arrayContaining(['startDifferenceK', 'startDelayS', 'storeLimitC']));
    expect(trialNames([], [])).toHaveLength(4);
  });
  test('each is offered once, but for those left out', () => {
    const values = settingOptions(['startDifferenceK']).flatMap(({ items }) =>
      items.map(({ value }) => value),
    );
    expect(values).toHaveLength(settingNames.length - 1);
    expect(new Set(values).size).toBe(values.length);
    expect(values).not.toContain('startDifferenceK');
  });
});

test('where the world came from is told part by part', () => {
  expect(worldLines(comparison)).toEqual([
    'Sun: worked out from the log',
    'Air temperature: measured',
    'Wind: measured',
    'Sky: assumed',
    'Draw-off: worked out from the log',
  ]);
});

describe('the comparison as a table', () => {
  const table = comparisonTable(comparison, units);
  test('has as many cells in each row as its head, but for the best possible', () => {
    expect(table[0]).toHaveLength(11);
    expect(table.slice(1, -1).every((row) => row.length === 11)).toBe(true);
    expect(table.at(-1)).toEqual(['Best possible [kWh]', 27.6]);
    expect(comparisonTable({ ...comparison, bestPossibleJ: null }, units)).toHaveLength(8);
  });
  test('gives heat in the chosen unit with the ends of the bands', () => {
    expect(table[1]).toEqual([
      'Net heat home [kWh]',
      25.2,
      24.8,
      23.3,
      26.3,
      25.9,
      24.4,
      27.4,
      1.1,
      0.7,
      1.5,
    ]);
    expect(comparisonTable(comparison, { ...units, heat: 'MJ' })[1]?.[1]).toBe(90.72);
  });
  test('leaves empty what is not known', () => {
    expect(table[7]?.slice(5)).toEqual([null, null, null, null, null, null]);
    expect(table[6]?.slice(8)).toEqual([0, null, null]);
  });
});

test.each([
  [0.86123, '1', '0.861'],
  [9.8765, 'W/m2K', '9.88 W/m2K'],
  [0.31, '', '0.31'],
])('%d of %s is written with three digits that count', (value, unit, words) => {
  expect(plain(significant(value, unit))).toBe(words);
});

test.each([
  [-0.0000147, 0.0383, 0],
  [0.000284, 0.0653, 0.0003],
  [-12.34, 100, -12],
  [0.5, 0, 0.5],
])('beside others of its size %d of %d counts as %d', (value, size, shown) => {
  expect(besideSize(value, size)).toBeCloseTo(shown, 12);
});
