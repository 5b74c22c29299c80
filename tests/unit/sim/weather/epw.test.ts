import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readEpw } from '../../../../sim/weather/epw.ts';
import type { Weather } from '../../../../sim/weather/weather.ts';
import { repairText, weatherFaultText } from '../../../../sim/weather/weather-file-text.ts';
import { epwHeader, epwRow, epwText, type Hour, location, sampleHours } from './file-samples.ts';

const hourMs = 3_600_000;
const hours = sampleHours();
const good = epwText(hours);

function read(text: string): { weather: Weather; repairs: Record<string, number> } {
  const file = readEpw(text, location);
  if (!file.ok) throw new Error(file.faults.map(weatherFaultText).join('; '));
  const repairs = Object.fromEntries(file.value.repairs.map(({ what, count }) => [what, count]));
  return { weather: file.value.weather, repairs };
}
function faultsOf(text: string): readonly string[] {
  const file = readEpw(text, location);
  return file.ok ? [] : file.faults.map(weatherFaultText);
}
/** The file with some hours changed. */
function changed(change: (hour: Hour, index: number) => Partial<Hour>): string {
  return epwText(hours.map((hour, i) => ({ ...hour, ...change(hour, i) })));
}
/** The file with the cells of one line changed; line 9 is the first of the data. */
function withCell(line: number, column: number, text: string): string {
  const lines = good.split('\r\n');
  const cells = (lines[line - 1] ?? '').split(',');
  cells[column - 1] = text;
  lines[line - 1] = cells.join(',');
  return lines.join('\r\n');
}

describe('weather of an EPW file', () => {
  const { weather, repairs } = read(good);
  const meanOf = (endMs: number, key: 'irradianceWM2' | 'diffuseWM2') => {
    let sum = 0;
    for (let s = 5; s < 3600; s += 10) sum += weather.at(endMs - hourMs + s * 1000)[key];
    return sum / 360;
  };

  it('keeps the energy of each hour and its diffuse part', () => {
    for (const { endMs, globalWM2, diffuseWM2 } of hours.filter(
      (_, i) => i % 7 === 0 && i > 3000 && i < 3600,
    )) {
      // A thousandth of what a bright hour has: minutes cut at sunrise and sunset.
      expect(Math.abs(meanOf(endMs, 'irradianceWM2') - globalWM2)).toBeLessThan(0.5 + 0.001 * globalWM2);
      expect(Math.abs(meanOf(endMs, 'diffuseWM2') - Math.min(globalWM2, diffuseWM2))).toBeLessThan(2);
    }
  });

  it('shapes the hour by the sun: more towards noon', () => {
    const { endMs } = hours.find(({ month, day, hour }) => month === 6 && day === 21 && hour === 9) as Hour;
    const early = weather.at(endMs - hourMs + 1000).irradianceWM2;
    expect(weather.at(endMs - 1000).irradianceWM2).toBeGreaterThan(1.05 * early);
  });

  it('spreads twilight evenly: never more light than the sun gives outside the air, but for a few watts', () => {
    const at = hours.findIndex(({ globalWM2 }, i) => i > 24 * 80 && globalWM2 > 0) - 1;
    const { weather: seen } = read(changed((_, i) => (i === at ? { globalWM2: 12, diffuseWM2: 12 } : {})));
    const { endMs } = hours[at] as Hour;
    for (let minute = 0.5; minute < 60; minute++) {
      const now = seen.at(endMs - hourMs + minute * 60_000);
      expect(now.irradianceWM2).toBeCloseTo(12, 9);
      expect(now.beamWM2).toBe(0);
    }
  });

  it('has the rest at the end of the hour and a straight line between', () => {
    const [before, after] = hours.slice(5000, 5002) as [Hour, Hour];
    expect(weather.at(before.endMs).airC).toBeCloseTo(before.airC, 9);
    expect(weather.at(before.endMs + hourMs / 2).airC).toBeCloseTo((before.airC + after.airC) / 2, 9);
    expect(weather.at(after.endMs).windMs).toBeCloseTo(after.windMs, 9);
    expect(weather.at(after.endMs).humidityFraction).toBeCloseTo(after.humidityPercent / 100, 9);
  });

  it('repeats its year by month, day and hour, the 29th of February as the 28th', () => {
    const at = (year: number, month: number, day: number) => weather.at(Date.UTC(year, month, day, 16, 20));
    for (const key of ['airC', 'windMs', 'humidityFraction'] as const) {
      expect(at(2040, 6, 4)[key]).toBe(at(2031, 6, 4)[key]);
      expect(at(2032, 1, 29)[key]).toBe(at(2031, 1, 28)[key]);
      expect(at(1996, 11, 31)[key]).toBe(at(2031, 11, 31)[key]);
    }
  });

  it('joins the end of December to the start of January', () => {
    const newYearMs = Date.UTC(2033, 0, 1, 2);
    const gap = weather.at(newYearMs).airC - weather.at(newYearMs - 1).airC;
    expect(Math.abs(gap)).toBeLessThan(0.01);
  });

  it('does not depend on what was asked before', () => {
    const other = read(good).weather;
    const atMs = Date.UTC(2031, 4, 5, 14, 3, 2);
    for (const offset of [1e9, -7e9, hourMs, 12]) other.at(atMs + offset);
    expect(other.at(atMs)).toEqual(weather.at(atMs));
  });

  it('says what it made up: the sky from cloud and dew point', () => {
    expect(repairs).toEqual({ 'long-wave-by-formula': 8760 });
  });

  it('splits by clearness without diffuse light, and takes direct light where it stands', () => {
    const without = changed(() => ({ diffuseWM2: 9999 }));
    const seen = read(without);
    expect(seen.repairs['diffuse-split-by-clearness']).toBeGreaterThan(4000);
    const noon = seen.weather.at(Date.UTC(2031, 5, 21, 14));
    expect(noon.beamWM2 + noon.diffuseWM2).toBe(noon.irradianceWM2);
  });
});

describe('an EPW file with faults', () => {
  const day = 24;
  const rows: readonly [title: string, text: string, said: string][] = [
    ['nothing', '', 'the file is empty'],
    ['spaces', ' \r\n \r\n', 'the file is empty'],
    ['bytes', `${epwHeader[0]}\nab\u0000c`, 'line 2, column 3: this is no text file'],
    ['another kind of file', 'date,air\n2031-01-01,4\n', 'is it an EPW file?'],
    ['a header alone', epwHeader.join('\n'), 'line 8: no weather follows the header'],
    ['half a header', epwHeader.slice(0, 3).join('\n'), 'no weather follows the header'],
    [
      'no latitude',
      withCell(1, 7, 'north'),
      'line 1, column 7: "north" cannot stand in the LOCATION line there',
    ],
    ['a latitude off the globe', withCell(1, 7, '95'), 'column 7: "95"'],
    ['a word for a number', withCell(50, 7, 'mild'), 'line 50, column 7: "mild" is no number'],
    ['a number in C', withCell(50, 14, '0x10'), 'line 50, column 14: "0x10" is no number'],
    ['hour 25', withCell(9, 4, '25'), 'line 9, column 4: "25" is no time that is known here'],
    ['30 February', withCell(1500, 3, '31').replace(/2031,3,31/, '2031,2,30'), '"2/30" is no time'],
    [
      'rows cut short',
      good.replace(epwRow(hours[40] as Hour), '2031,1,2,17,60'),
      'line 49: 5 columns, at least 22',
    ],
    ['an open quote', withCell(60, 6, '"?9'), 'a quotation mark is opened and not closed'],
    [
      'a hole of a day',
      epwText(hours.filter((_, i) => i < 100 || i >= 100 + day)),
      'no air temperature for 24 h',
    ],
    ['no air temperature', changed(() => ({ airC: 99.9 })), 'the file holds no air temperature at all'],
    ['degrees Fahrenheit', changed(({ airC }) => ({ airC: airC * 1.8 + 32 })), 'degrees Fahrenheit'],
    ['km/h', changed(({ windMs }) => ({ windMs: windMs * 3.6 })), 'km/h'],
    [
      'humidity as a fraction',
      changed((h) => ({ humidityPercent: h.humidityPercent / 100 })),
      'fractions taken',
    ],
    ['kJ/m2', changed(({ globalWM2 }) => ({ globalWM2: globalWM2 * 3.6 })), 'kJ/m2 taken for Wh/m2'],
    ['kWh/m2', changed(({ globalWM2 }) => ({ globalWM2: globalWM2 / 1000 })), 'is the unit larger?'],
    ['a zone 2 h too far east', withCell(1, 9, '0.0'), 'comes 2 h before the sun over the place'],
    ['a zone 1 h too far west', withCell(1, 9, '-3.0'), 'comes 1 h after the sun over the place'],
    ['UTC taken for local', withCell(1, 9, '9.0'), 'comes 11 h before the sun over the place'],
    [
      'a word for rows an hour',
      good.replace('DATA PERIODS,1,1', 'DATA PERIODS,1,x'),
      'column 3: "x" is no number',
    ],
  ];
  it.each(rows)('%s', (_, text, said) => {
    expect(faultsOf(text).join('; ')).toContain(said);
  });

  it('bears with a clock that is half an hour off the sun, as those of many zones are', () => {
    expect(faultsOf(withCell(1, 8, '-37'))).toEqual([]);
    expect(faultsOf(withCell(1, 8, '-19'))).toEqual([]);
    expect(faultsOf(withCell(1, 8, '-42')).join()).toContain('comes 1 h before the sun');
  });

  it('stops counting after twenty', () => {
    const faults = faultsOf(
      good.replaceAll('?9?9', '?9?9').replaceAll(/^2031,(\d+),(\d+),/gm, '2031,13,$2,'),
    );
    expect(faults).toHaveLength(20);
  });

  it('never throws, whatever was cut out of it or put in', () => {
    const short = epwText(hours.slice(0, 200));
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: short.length }),
        fc.integer({ min: 0, max: 400 }),
        fc.string({ maxLength: 8, unit: 'binary' }),
        (at, length, put) => {
          const file = readEpw(short.slice(0, at) + put + short.slice(at + length), location);
          if (!file.ok)
            for (const fault of file.faults) expect(weatherFaultText(fault).length).toBeGreaterThan(8);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('an EPW file that can be mended', () => {
  const index = hours.findIndex(({ month, day, hour }) => month === 6 && day === 21 && hour === 12);
  const only = (at: number, change: Partial<Hour>) => changed((_, i) => (i === at ? change : {}));
  const shuffled = hours.toSpliced(500, 1).toSpliced(510, 0, hours[500] as Hour);
  const leapDay = { ...(hours[1400] as Hour), month: 2, day: 29 };
  const rows: readonly [title: string, text: string, what: string, count: number, said: string][] = [
    ['a missing value', only(index, { airC: 99.9 }), 'value-missing', 1, 'filled'],
    ['three missing rows', epwText(hours.toSpliced(700, 3)), 'row-missing', 3, 'missing rows'],
    ['a row twice', epwText(hours.toSpliced(700, 0, hours[699] as Hour)), 'row-duplicated', 1, 'left out'],
    ['a row late', epwText(shuffled), 'row-out-of-order', 1, 'put in order'],
    ['a leap day', epwText(hours.toSpliced(1416, 0, leapDay)), 'leap-day-left-out', 1, '29 February'],
    ['light above the sun', only(index, { globalWM2: 1900 }), 'brighter-than-space', 1, 'cut down'],
    ['light at midnight', only(index - 12, { globalWM2: 90 }), 'sun-at-night', 1, 'sun down'],
    ['light below 0', only(index - 12, { globalWM2: -3 }), 'negative-radiation', 1, 'below 0'],
    ['104 % humidity', only(index, { humidityPercent: 104 }), 'damper-than-saturated', 1, 'above 100 %'],
    ['a place elsewhere', good, 'place-differs', 1, 'another place'],
  ];
  it.each(rows)('%s', (_, text, what, count, said) => {
    const site = what === 'place-differs' ? { ...location, latitudeDeg: 47 } : location;
    const file = readEpw(text, site);
    if (!file.ok) throw new Error(file.faults.map(weatherFaultText).join('; '));
    const repair = file.value.repairs.find((one) => one.what === what);
    expect(repair?.count).toBe(count);
    if (repair !== undefined) expect(repairText(repair)).toContain(said);
  });

  it('names the first line of what it mended', () => {
    const file = readEpw(only(index, { airC: 99.9 }), location);
    const mended = file.ok ? file.value.repairs.find(({ what }) => what === 'value-missing') : undefined;
    expect(mended?.firstLine).toBe(9 + index);
  });

  it('puts late and missing rows where they belong', () => {
    const { weather } = read(epwText(shuffled));
    expect(weather.at((hours[500] as Hour).endMs).airC).toBeCloseTo((hours[500] as Hour).airC, 9);
    const filled = read(epwText(hours.toSpliced(700, 1))).weather;
    const [before, after] = [hours[699] as Hour, hours[701] as Hour];
    expect(filled.at((hours[700] as Hour).endMs).airC).toBeCloseTo((before.airC + after.airC) / 2, 9);
  });
});
