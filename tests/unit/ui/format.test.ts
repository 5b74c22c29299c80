import { describe, expect, test } from 'vitest';
import { inLine, numberFormats } from '../../../desktop/ui/format/numbers.ts';
import { durationText, localDayOf, timeFormats } from '../../../desktop/ui/format/times.ts';
import { differenceIn, heatIn, temperatureIn } from '../../../desktop/ui/format/units.ts';

const space = '\u00a0';

describe('units', () => {
  test('temperatures keep their fixed points', () => {
    expect(temperatureIn('F', 0)).toBe(32);
    expect(temperatureIn('F', 100)).toBe(212);
    expect(temperatureIn('F', -40)).toBe(-40);
    expect(temperatureIn('C', 41.3)).toBe(41.3);
  });
  test('a difference has no offset', () => {
    expect(differenceIn('F', 10)).toBe(18);
    expect(differenceIn('C', 10)).toBe(10);
  });
  test('heat is 3.6 MJ to the kilowatt hour', () => {
    expect(heatIn('kWh', 3.6e6)).toBe(1);
    expect(heatIn('MJ', 3.6e6)).toBe(3.6);
  });
});

describe('numbers', () => {
  const metric = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en');
  const other = numberFormats({ temperature: 'F', heat: 'MJ' }, 'de');
  test.each([
    [0.02 * 3.6e6, '0.02'],
    [9.994 * 3.6e6, '9.99'],
    [18.46 * 3.6e6, '18.5'],
    [123.4 * 3.6e6, '123'],
    [0, '0.0'],
  ])('%d J are %s kWh', (valueJ, number) => {
    expect(metric.heat(valueJ)).toEqual({ number, unit: 'kWh' });
  });
  test('a value that rounds to nought has no minus', () => {
    expect(metric.temperature(-0.04).number).toBe('0.0');
    expect(metric.temperature(-0.06).number).toBe('-0.1');
  });
  test('unit and decimal sign follow the choices', () => {
    expect(inLine(other.temperature(40))).toBe(`104,0${space}°F`);
    expect(inLine(other.heat(5.25e7))).toBe(`52,5${space}MJ`);
  });
  test.each([
    ['WM2', 873.6, `874${space}W/m²`],
    ['Fraction', 0.671, `67${space}%`],
    ['LMin', 13.44, `13.4${space}L/min`],
    ['Mm', 39.6, `40${space}mm`],
    ['Ms', 2.55, `2.5${space}m/s`],
    ['W', 44.4, `44${space}W`],
  ] as const)('%s', (unit, value, text) => {
    expect(inLine(metric.channel(unit, value))).toBe(text);
  });
  test('power turns to kilowatts at a thousand watts', () => {
    expect(inLine(metric.power(999))).toBe(`999${space}W`);
    expect(inLine(metric.power(5890))).toBe(`5.9${space}kW`);
    expect(inLine(metric.power(-5890))).toBe(`-5.9${space}kW`);
  });
});

describe('what the site is described by', () => {
  const metric = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en-GB');
  test('a difference of temperatures has no offset', () => {
    expect(inLine(metric.difference(1))).toBe(`1.0${space}K`);
    expect(inLine(numberFormats({ temperature: 'F', heat: 'kWh' }, 'en-GB').difference(1))).toBe(
      `1.8${space}°F`,
    );
  });
  test.each([
    [0, '0.0 kB'],
    [999_999, '1,000.0 kB'],
    [1_000_000, '1.0 MB'],
    [48_234_496, '48.2 MB'],
    [1_000_000_000, '1.0 GB'],
  ])('%d bytes are %s', (bytes, text) => {
    expect(inLine(metric.bytes(bytes)).replaceAll(space, ' ')).toBe(text);
  });
  test('a measure has the digits that it was given', () => {
    expect(inLine(metric.measure(0.00834, 4, 'K m²/W'))).toBe(`0.0083${space}K m²/W`);
  });
});

describe('times', () => {
  // Azores: UTC-1 in winter, UTC in summer; the clock of 2031 goes forward on 30 March at 00:00 local.
  const azores = timeFormats('Atlantic/Azores', 'en-GB');
  test('are those of the site', () => {
    expect(azores.clock(Date.UTC(2031, 0, 15, 0, 30))).toBe('23:30');
    expect(azores.clock(Date.UTC(2031, 5, 21, 13, 20))).toBe('13:20');
    expect(azores.clockWithSeconds(Date.UTC(2031, 5, 21, 13, 20, 5))).toBe('13:20:05');
  });
  test('midnight is 00, not 24', () => {
    expect(azores.clock(Date.UTC(2031, 5, 21, 0, 0))).toBe('00:00');
  });
  test('a moment carries its day when it is not today’s at the site, and its year when that is far', () => {
    const nowMs = Date.UTC(2031, 0, 15, 12);
    expect(azores.moment(Date.UTC(2031, 0, 15, 1, 0), nowMs)).toBe('00:00');
    expect(azores.moment(Date.UTC(2031, 0, 15, 0, 59), nowMs)).toBe('Tue 14 Jan, 23:59');
    expect(azores.moment(Date.UTC(2031, 0, 16, 1, 5), nowMs)).toBe('Thu 16 Jan, 00:05');
    const farMs = nowMs - 300 * 86_400_000;
    expect(azores.moment(farMs, nowMs)).toContain('2030');
    expect(azores.moment(farMs + 60_000, nowMs)).not.toContain('2030');
  });
  test('the local day of an instant is the site’s', () => {
    expect(localDayOf(Date.UTC(2031, 0, 15, 0, 30), 'Atlantic/Azores')).toBe('2031-01-14');
    expect(localDayOf(Date.UTC(2031, 0, 15, 1, 0), 'Atlantic/Azores')).toBe('2031-01-15');
  });
  test('a day is a name: no zone moves it', () => {
    expect(timeFormats('Pacific/Kiritimati', 'en-GB').day('2031-06-21')).toBe(
      timeFormats('Pacific/Niue', 'en-GB').day('2031-06-21'),
    );
    expect(azores.day('2031-06-21')).toContain('21 June 2031');
    expect(azores.month('2031-06')).toBe('June 2031');
  });
  test('the week begins on Monday', () => {
    expect(azores.weekdays().map(({ long }) => long)).toEqual([
      'Monday',
      'Tuesday',
      'Wednesday',
      'Thursday',
      'Friday',
      'Saturday',
      'Sunday',
    ]);
  });
  test.each([
    [-5, '0 s'],
    [45_400, '45 s'],
    [59_600, '1 min'],
    [12 * 60_000, '12 min'],
    [59.6 * 60_000, '1 h 00 min'],
    [185 * 60_000, '3 h 05 min'],
    [52 * 3_600_000, '2 d 4 h'],
  ])('%d ms last %s', (ms, text) => {
    expect(durationText(ms).replaceAll(space, ' ')).toBe(text);
  });
});
