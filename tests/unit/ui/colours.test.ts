import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { contrast, luminance, parseHex, surfaces } from '../../../desktop/ui/charts/colours.ts';
import { bands, seriesLooks, seriesNames } from '../../../desktop/ui/charts/series.ts';
import { inkOn, scaleColdC, scaleHotC, waterColour } from '../../../desktop/ui/charts/temperature-scale.ts';

const css = readFileSync(new URL('../../../desktop/ui/styles/theme.css', import.meta.url), 'utf8');

/** Variables of one scheme in the style sheet. */
function tokens(selector: string): Record<string, string> {
  const block = css.slice(css.indexOf(`${selector} {`)).split('}')[0] ?? '';
  return Object.fromEntries([...block.matchAll(/(--[\w-]+): (#[0-9a-f]{6});/g)].map((m) => [m[1], m[2]]));
}
const schemes = { light: tokens(':root'), dark: tokens(':root[data-mantine-color-scheme="dark"]') };

describe.each(['light', 'dark'] as const)('the %s scheme', (scheme) => {
  const token = (name: string) => schemes[scheme][`--${name}`] ?? 'missing';
  test('charts are tested on the surface that they stand on', () => {
    expect(token('surface')).toBe(surfaces[scheme]);
  });
  test.each([
    ['ink', 'page'],
    ['ink', 'surface'],
    ['ink-soft', 'page'],
    ['ink-soft', 'surface'],
    ['ink-soft', 'note-back'],
    ['ink-soft', 'abnormal-back'],
    ['ink-soft', 'doubt-back'],
    ['chosen', 'page'],
    ['chosen', 'surface'],
    ['chosen', 'chosen-back'],
    ['surface', 'chosen'],
    ['abnormal', 'surface'],
    ['abnormal', 'abnormal-back'],
    ['doubt', 'surface'],
    ['doubt', 'doubt-back'],
  ])('text %s on %s has a contrast of 4.5 (WCAG 1.4.3)', (ink, back) => {
    expect(contrast(token(ink), token(back))).toBeGreaterThanOrEqual(4.5);
  });
  test.each(['part', 'line-strong', 'abnormal-line', 'doubt-line'])(
    'drawn in %s stands out 3:1 (WCAG 1.4.11)',
    (ink) => {
      expect(contrast(token(ink), token('surface'))).toBeGreaterThanOrEqual(3);
    },
  );
  test.each(seriesNames)('the curve %s stands out 3:1', (name) => {
    expect(contrast(seriesLooks[name].colour[scheme], surfaces[scheme])).toBeGreaterThanOrEqual(3);
  });
});

test('curves of one band differ in more than colour', () => {
  for (const band of bands) {
    const dashes = seriesNames
      .filter((name) => seriesLooks[name].band === band)
      .map((name) => seriesLooks[name].dash.join());
    expect(new Set(dashes).size).toBe(dashes.length);
  }
});

describe('contrast', () => {
  test('has the values that its definition gives for black, white and grey (WCAG 2.2)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#777777', '#777777')).toBe(1);
    // 4.54 : 1 is the well-known limit grey on white.
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });
});

describe('the scale of water temperatures', () => {
  const steps = Array.from({ length: 121 }, (_, i) => scaleColdC + ((scaleHotC - scaleColdC) * i) / 120);
  test('grows lighter all the way, so that it reads without colour', () => {
    const lights = steps.map((temperatureC) => luminance(waterColour(temperatureC)));
    for (let i = 4; i < lights.length; i += 4) expect(lights[i]).toBeGreaterThan(lights[i - 4] as number);
  });
  test('keeps its ends beyond its range', () => {
    expect(waterColour(-30)).toBe(waterColour(scaleColdC));
    expect(waterColour(120)).toBe(waterColour(scaleHotC));
  });
  test('keeps blue the strongest in the cold and the weakest in the hot', () => {
    const cold = parseHex(waterColour(scaleColdC));
    const hot = parseHex(waterColour(scaleHotC));
    expect(cold.blue).toBeGreaterThan(cold.red);
    expect(hot.blue).toBeLessThan(hot.red);
  });
  test('carries a text of 4.5:1 everywhere', () => {
    for (const temperatureC of steps) {
      const colour = waterColour(temperatureC);
      expect(contrast(inkOn(colour), colour)).toBeGreaterThanOrEqual(4.5);
    }
  });
});
