import { describe, expect, test } from 'vitest';
import { sentenceIn } from '../../../desktop/ui/format/sentence.ts';

const fahrenheit = { temperature: 'F', heat: 'kWh' } as const;
const megajoules = { temperature: 'C', heat: 'MJ' } as const;

describe('a sentence of the controller', () => {
  test('stays as it is in the units that it was written in', () => {
    const sentence = 'The pan is at 4.0 °C, 1.5 K above; a refill costs 0.13 kWh.';
    expect(sentenceIn({ temperature: 'C', heat: 'kWh' }, sentence)).toBe(sentence);
  });

  test.each([
    [
      'The full pan is 3.3 K above the store bottom; the pump starts at 6 K.',
      'The full pan is 5.9 °F above the store bottom; the pump starts at 10.8 °F.',
    ],
    ['the pan is at -1.5 °C; it acts at 4.0 °C.', 'the pan is at 29.3 °F; it acts at 39.2 °F.'],
    [
      'falls by 2.0 K an hour; it would be at 1 °C in 30 min.',
      'falls by 3.6 °F an hour; it would be at 34 °F in 30 min.',
    ],
    ['It is at 85 °C, too hot', 'It is at 185 °F, too hot'],
    ['Legionella grows in water of 20 to 45 °C.', 'Legionella grows in water of 68 to 113 °F.'],
    ['Off by 0.5 to 1 K, 5 K at most.', 'Off by 0.9 to 1.8 °F, 9 °F at most.'],
  ])('has its temperatures and differences in °F: %s', (written, shown) => {
    expect(sentenceIn(fahrenheit, written)).toBe(shown);
  });

  test('has its heat in MJ', () => {
    expect(sentenceIn(megajoules, 'A fill would bring 0.50 kWh; it costs 1 kWh at 20 °C.')).toBe(
      'A fill would bring 1.80 MJ; it costs 3.6 MJ at 20 °C.',
    );
    expect(sentenceIn(megajoules, 'It brings 2.00 kWh more (-1.50 to 2.50 kWh), 10 to 20 days.')).toBe(
      'It brings 7.20 MJ more (-5.40 to 9.00 MJ), 10 to 20 days.',
    );
  });

  test.each([
    'About 12 W/m2K, 3.5 K/min and 4 kWh/m2 are rates.',
    'Sensor x20 °C, version 1.2.3 K and 14.0 L/min are no temperatures.',
    'No number: ? °C and ? K.',
    '5 Kelvin and 5 °Celsius',
  ])('keeps what is no such quantity: %s', (sentence) => {
    expect(sentenceIn({ temperature: 'F', heat: 'MJ' }, sentence)).toBe(sentence);
  });
});
