import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  readWeatherCsv,
  type WeatherCsvMap,
  weatherCsvMapSchema,
} from '../../../../sim/weather/weather-csv.ts';
import { weatherFaultText } from '../../../../sim/weather/weather-file-text.ts';
import { type Hour, location, sampleHours } from './file-samples.ts';

const hourMs = 3_600_000;
const all = sampleHours();
/** Twelve days of May. */
const hours = all.filter(({ month, day }) => month === 5 && day >= 10 && day < 22);

const plain = {
  time: { column: 'time' },
  air: { column: 'air', unit: 'C' },
  humidity: { column: 'rh', unit: '%' },
  wind: { column: 'wind', unit: 'm/s' },
  irradiance: { column: 'sun', unit: 'W/m2' },
  rain: { column: 'rain', unit: 'mm' },
} as const;
const mapOf = (change: object = {}): WeatherCsvMap => weatherCsvMapSchema.parse({ ...plain, ...change });

const names = 'time,air,rh,wind,sun,rain';
const line = (time: string, { airC, humidityPercent, windMs, globalWM2, rainMm }: Hour) =>
  [time, airC, humidityPercent, windMs, globalWM2, rainMm].join(',');
const text = (rows: readonly string[], header = names) => `${[header, ...rows].join('\n')}\n`;
const utc = (atMs: number) => new Date(atMs).toISOString();
const good = text(hours.map((hour) => line(utc(hour.endMs), hour)));

function read(content: string, map = mapOf(), place = location) {
  const file = readWeatherCsv(content, map, place);
  if (!file.ok) throw new Error(file.faults.map(weatherFaultText).join('; '));
  const repairs = Object.fromEntries(file.value.repairs.map(({ what, count }) => [what, count]));
  return { weather: file.value.weather, repairs };
}
const faultsOf = (content: string, map = mapOf()) => {
  const file = readWeatherCsv(content, map, location);
  return file.ok ? '' : file.faults.map(weatherFaultText).join('; ');
};
/** The file with one column put through a change and another name. */
const withColumn = (key: 'airC' | 'humidityPercent' | 'windMs' | 'globalWM2', factor: number, added = 0) =>
  text(hours.map((hour) => line(utc(hour.endMs), { ...hour, [key]: hour[key] * factor + added })));

describe('weather of a CSV file', () => {
  const noon = hours[3 * 24 + 12] as Hour;

  it('keeps the energy of each hour and has the rest at its end', () => {
    const { weather } = read(good);
    for (const { endMs, globalWM2, airC } of hours.slice(24, 72)) {
      let sum = 0;
      for (let s = 5; s < 3600; s += 10) sum += weather.at(endMs - hourMs + s * 1000).irradianceWM2;
      expect(Math.abs(sum / 360 - globalWM2)).toBeLessThan(0.5 + 0.001 * globalWM2);
      expect(weather.at(endMs).airC).toBeCloseTo(airC, 9);
    }
  });

  it.each([
    ['F', { air: { column: 'air', unit: 'F' } }, withColumn('airC', 1.8, 32)],
    ['K', { air: { column: 'air', unit: 'K' } }, withColumn('airC', 1, 273.15)],
    ['fraction', { humidity: { column: 'rh', unit: 'fraction' } }, withColumn('humidityPercent', 0.01)],
    ['km/h', { wind: { column: 'wind', unit: 'km/h' } }, withColumn('windMs', 3.6)],
    ['Wh/m2', { irradiance: { column: 'sun', unit: 'Wh/m2' } }, good],
    ['kJ/m2', { irradiance: { column: 'sun', unit: 'kJ/m2' } }, withColumn('globalWM2', 3.6)],
    ['MJ/m2', { irradiance: { column: 'sun', unit: 'MJ/m2' } }, withColumn('globalWM2', 0.0036)],
  ])('takes %s', (_, change, content) => {
    const [seen, expected] = [read(content, mapOf(change)), read(good)].map(({ weather }) =>
      weather.at(noon.endMs),
    );
    expect(seen?.airC).toBeCloseTo(expected?.airC ?? 0, 6);
    expect(seen?.humidityFraction).toBeCloseTo(expected?.humidityFraction ?? 0, 6);
    expect(seen?.windMs).toBeCloseTo(expected?.windMs ?? 0, 6);
    expect(seen?.irradianceWM2).toBeCloseTo(expected?.irradianceWM2 ?? 0, 6);
  });

  it('takes times that mark the start of their interval', () => {
    const starts = text(hours.map((hour) => line(utc(hour.endMs - hourMs), hour)));
    const map = mapOf({ time: { column: 'time', marks: 'start' } });
    expect(read(starts, map).weather.at(noon.endMs)).toEqual(read(good).weather.at(noon.endMs));
  });

  it('repeats the whole days of a short file outside its span', () => {
    const { weather } = read(good);
    const later = weather.at(noon.endMs + 12 * 24 * hourMs);
    expect(later.airC).toBeCloseTo(noon.airC, 9);
    expect(later.sunZenithDeg).not.toBe(weather.at(noon.endMs).sunZenithDeg);
  });

  it('makes light of sunshine: a day without is at 0.25 of what the sun gives outside the air, a full one at 0.75', () => {
    const sunny = (hour: Hour) => (hour.day < 16 ? 0 : 60);
    const rows = hours.map((hour) => `${utc(hour.endMs)},${hour.airC},${hour.windMs},${sunny(hour)}`);
    const { irradiance: _, humidity: __, rain: ___, ...rest } = plain;
    const map = weatherCsvMapSchema.parse({ ...rest, sunshine: { column: 'sunshine', unit: 'min' } });
    const { weather } = read(text(rows, 'time,air,wind,sunshine'), map);
    const at = (day: number) => weather.at(Date.UTC(2031, 4, day, 14)).irradianceWM2;
    expect(at(19) / at(13)).toBeGreaterThan(2.95);
    expect(at(19) / at(13)).toBeLessThan(3.1);
  });

  it('goes without humidity: the sky by the air temperature, counted', () => {
    const { humidity: _, ...rest } = plain;
    const { weather, repairs } = read(good, weatherCsvMapSchema.parse(rest));
    expect(repairs['long-wave-by-formula']).toBe(hours.length);
    const night = weather.at((hours[24 * 5 + 4] as Hour).endMs);
    expect(night.longWaveWM2).toBeGreaterThan(200);
    expect(night.longWaveWM2).toBeLessThan(420);
  });
});

describe('local times', () => {
  const zone = 'Europe/Berlin';
  const place = { ...location, longitudeDeg: 10 };
  const map = mapOf({ time: { column: 'time', zone } });
  const clock = new Intl.DateTimeFormat('sv-SE', {
    timeZone: zone,
    dateStyle: 'short',
    timeStyle: 'medium',
  });
  /** Three nights and days of even weather whose air temperature counts the hours. */
  const counted = (startMs: number, timeOf: (atMs: number) => string) =>
    text(Array.from({ length: 72 }, (_, i) => `${timeOf(startMs + i * hourMs)},${i / 4},60,2,0,0`));

  it.each([
    ['spring forward', Date.UTC(2026, 2, 28), {}],
    ['back in autumn', Date.UTC(2026, 9, 24), { 'clock-hour-repeated': 2 }],
  ])('%s: every hour in its place', (_, startMs, noted) => {
    const { weather, repairs } = read(
      counted(startMs, (atMs) => clock.format(atMs)),
      map,
      place,
    );
    for (let i = 0; i < 72; i++) expect(weather.at(startMs + i * hourMs).airC).toBeCloseTo(i / 4, 9);
    expect(repairs).toMatchObject(noted);
    expect(repairs['row-missing']).toBeUndefined();
  });

  it('reads a time that the clocks skip as if they had not been put forward', () => {
    const startMs = Date.UTC(2026, 2, 28);
    const winterClock = (atMs: number) => new Date(atMs + hourMs).toISOString().slice(0, 16);
    const skipped = counted(startMs, (atMs) =>
      winterClock(atMs).startsWith('2026-03-29T02') ? winterClock(atMs) : clock.format(atMs),
    );
    const { weather, repairs } = read(skipped, map, place);
    // 02:00 is skipped; it is the instant that the clocks call 03:00, which follows as a second row.
    expect(repairs['clock-hour-skipped']).toBe(1);
    expect(weather.at(Date.UTC(2026, 2, 29, 1)).airC).toBeCloseTo(25 / 4, 9);
  });

  it('knows an unknown zone', () => {
    expect(faultsOf(good, mapOf({ time: { column: 'time', zone: 'Mare/Nostrum' } }))).toContain(
      'Mare/Nostrum',
    );
  });
});

describe('a CSV file with faults', () => {
  const lines = good.split('\n');
  const replaced = (at: number, put: string) => lines.toSpliced(at - 1, 1, put).join('\n');
  const local = text(hours.map((hour) => line(utc(hour.endMs).slice(0, 16), hour)));
  const year = text(all.map((hour) => line(utc(hour.endMs + 3 * hourMs), hour)));
  const faulty: [title: string, content: string, said: string, change?: object][] = [
    ['nothing', '', 'the file is empty'],
    ['a header alone', names, 'line 1: no weather follows the header'],
    ['bytes', 'time,air\n\u0001\u0002,3\n', 'line 2, column 1: this is no text file'],
    [
      'no such column',
      text(lines.slice(1), 'time,temp,rh,wind,sun,rain'),
      'no column "air"; there are "time", "temp"',
    ],
    ['a column twice', text(lines.slice(1), 'time,air,rh,wind,sun,air'), '"air" stands there more than once'],
    [
      'a word for a number',
      replaced(5, (lines[4] ?? '').replace(/,[^,]*$/, ',dry')),
      'line 5, column 6: "dry" is no',
    ],
    ['no time', replaced(7, 'yesterday,1,2,3,4,5'), 'line 7, column 1: "yesterday" is no time'],
    ['local times without a zone', local, 'line 2, column 1'],
    ['24 o clock', replaced(7, '2031-05-10T24:00:00Z,1,2,3,4,5'), 'line 7, column 1'],
    [
      'times off the grid',
      replaced(30, (lines[29] ?? '').replace(':00:00.', ':20:00.')),
      'line 30: the rows do not stand',
    ],
    ['a hole', lines.toSpliced(60, 9).join('\n'), 'for 9 h; up to 6 h are filled'],
    ['an open quote', replaced(9, `"${lines[8]}`), 'a quotation mark is opened and not closed'],
    ['light 3 h late', year, 'comes 3 h after the sun over the place'],
    [
      'per cent as fractions',
      good,
      'per cent taken for fractions',
      { humidity: { column: 'rh', unit: 'fraction' } },
    ],
    ['kJ as Wh', withColumn('globalWM2', 3.6), 'these look like kJ/m2'],
    ['kelvin as C', withColumn('airC', 1, 273.15), 'these look like kelvin'],
  ];
  it.each(faulty)('%s', (_, content, said, change = {}) => {
    expect(faultsOf(content, mapOf(change))).toContain(said);
  });

  it('never throws, whatever was cut out of it or put in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: good.length }),
        fc.integer({ min: 0, max: 300 }),
        fc.oneof(
          fc.string({ maxLength: 8, unit: 'binary' }),
          fc.constantFrom('"', ',,', '\n', '\r', '9e999', '-'),
        ),
        (at, length, put) => {
          const file = readWeatherCsv(good.slice(0, at) + put + good.slice(at + length), mapOf(), location);
          if (!file.ok)
            for (const fault of file.faults) expect(weatherFaultText(fault).length).toBeGreaterThan(8);
          else expect(Number.isFinite(file.value.weather.at(1.9e12).airC)).toBe(true);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('needs a map with light in it', () => {
    const { irradiance: _, ...rest } = plain;
    expect(weatherCsvMapSchema.safeParse(rest).success).toBe(false);
  });
});
