import { describe, expect, test } from 'vitest';
import { numberFormats } from '../../../desktop/ui/format/numbers.ts';
import { timeFormats } from '../../../desktop/ui/format/times.ts';
import { allowedWords } from '../../../desktop/ui/live/allowed-words.ts';
import type { AllowedHeat } from '../../../shared-types/allowed-heat.ts';

const numbers = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en-GB');
const times = timeFormats('UTC', 'en-GB');
const words = (allowed: AllowedHeat) => allowedWords(allowed, numbers, times);
const told = {
  state: 'told',
  day: '2031-06-21',
  sun: 'measured',
  untilMs: Date.UTC(2031, 5, 21, 13, 20),
  allowedJ: 3.6e7,
  heatHomeJ: 2.7e7,
} as const;

describe('what is said of the heat that the weather allowed', () => {
  test('names share, heat and time, and which sun it was', () => {
    expect(words(told)).toEqual({
      sentence: '75 % of about 10.0\u00a0kWh that this weather allowed until 13:20.',
      share: 0.75,
    });
    expect(words({ ...told, sun: 'clear-sky' }).sentence).toContain('that a clear sky would have allowed');
  });
  test('keeps the bar within its bounds when more came home than was reckoned', () => {
    expect(words({ ...told, heatHomeJ: 4e7 })).toMatchObject({ share: 1 });
    expect(words({ ...told, heatHomeJ: 4e7 }).sentence).toMatch(/^111 %/);
    expect(words({ ...told, heatHomeJ: -1e6 }).share).toBe(0);
  });
  test('compares with nothing below 0.1 kWh', () => {
    expect(words({ ...told, allowedJ: 3.59e5 })).toEqual({
      sentence: 'Until 13:20 this weather allowed next to nothing.',
    });
    expect(words({ ...told, allowedJ: 3.6e5 }).share).toBeDefined();
  });
  test('says why when it cannot be told', () => {
    expect(words({ state: 'no-sun-yet' }).sentence).toContain('too early');
    expect(words({ state: 'no-air-sensor' }).sentence).toContain('no sensor measures the air');
    expect(words({ state: 'too-little-logged', coveredFraction: 0.41 }).sentence).toContain('41 %');
  });
});
