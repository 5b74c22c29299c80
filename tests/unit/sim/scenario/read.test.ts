import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { partsOf } from '../../../../sim/plant/parts.ts';
import { usualTraits } from '../../../../sim/plant/traits.ts';
import { readScenario } from '../../../../sim/scenario/read.ts';
import type { SeededWeather, Weather } from '../../../../sim/weather/weather.ts';
import { serialContent, writeSite } from '../../../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../../../support/temporary.ts';
import { epwText, sampleHours } from '../weather/file-samples.ts';

const site = resolve('sim/scenarios/quillhaven-wash-house.yaml');
const whole = `schema: 1
title: A day to try the reader with
site: ${site}
seed: 4
startsAt: 2031-06-21T08:30
weather: { kinds: [hazy, clear, broken] }
water: { storeC: 41, panFull: true }
draw: { profile: nursery }
traits: { contactWM2K: 180, tapC: 45 }
faults:
  - { name: half-flow, from: '11:00', until: '12:30', size: 0.4 }
  - { name: sensors-swapped, channel: panOutletC, other: storeTopC }
`;

let folder: TemporaryFolder;
beforeEach(() => {
  folder = temporaryFolder('scenario');
});
afterEach(() => folder.remove());

function read(text: string, changes = {}) {
  const file = folder.file('s.yaml');
  writeFileSync(file, text);
  return readScenario(file, changes);
}
function good(text: string, changes = {}) {
  const result = read(text, changes);
  if (!result.ok) throw new Error(result.faults.join('\n'));
  return result.value;
}
const kindOf = (weather: Weather, atMs: number) => (weather as SeededWeather).kindAt(atMs);
const startMs = Date.UTC(2031, 5, 21, 8, 30);
const dayMs = 86_400_000;

describe('a scenario file', () => {
  it('is read with all that it names', () => {
    const scenario = good(whole);
    expect(scenario.site.name).toBe('quillhaven-wash-house');
    expect([scenario.title, scenario.seed, scenario.startMs]).toEqual([
      'A day to try the reader with',
      4,
      startMs,
    ]);
    const options = scenario.plantOptions(startMs);
    expect(options).toMatchObject({ waterC: 41, panFull: true, draw: 'nursery' });
    expect(options.panC).toBe(scenario.weather.at(startMs).airC);
    const { traits } = partsOf(scenario.site, scenario.setup);
    expect(traits).toEqual({ ...usualTraits, contactWM2K: 180, tapC: 45 });
    expect(scenario.wishes.map(({ fault }) => fault)).toEqual([
      { name: 'half-flow', size: 0.4 },
      { name: 'sensors-swapped', channel: 'panOutletC', other: 'storeTopC', size: 0 },
    ]);
    expect(scenario.wishes[0]).toMatchObject({ from: { minuteOfDay: 660 }, until: { minuteOfDay: 750 } });
  });

  it('needs no more than schema, title and site', () => {
    const scenario = good(`schema: 1\ntitle: t\nsite: ${site}\n`);
    expect(scenario).toMatchObject({ seed: 1, startMs: undefined, wishes: [], exactSensors: false });
    expect(scenario.plantOptions(startMs)).toMatchObject({ waterC: 22, panFull: false, draw: 'wash-house' });
  });

  it('begins with the first kind of day on its first local day', () => {
    const { weather } = good(whole);
    const noonMs = startMs + 4 * 3_600_000;
    const kinds = [0, 1, 2, 3].map((day) => kindOf(weather, noonMs + day * dayMs));
    expect(kinds).toEqual(['hazy', 'clear', 'broken', 'hazy']);
  });

  it('gives way to the options beside it', () => {
    const bakehouse = resolve('sim/scenarios/marrow-skerry-bakehouse.yaml');
    const plain = whole.replace(/faults:[\s\S]*$/, '');
    const scenario = good(plain, { siteFile: bakehouse, seed: 9, kinds: ['overcast'] });
    expect([scenario.site.name, scenario.seed]).toEqual(['marrow-skerry-bakehouse', 9]);
    expect(kindOf(scenario.weather, startMs)).toBe('overcast');
  });

  const change = (key: string, value: unknown) => stringify({ ...parse(whole), [key]: value });
  const hours = sampleHours();

  it('takes its weather from an EPW file beside it, and says what was mended', () => {
    writeFileSync(folder.file('year.epw'), epwText(hours));
    const scenario = good(whole.replace('{ kinds: [hazy, clear, broken] }', '{ epw: year.epw }'));
    const noon = hours.find(({ month, day, hour }) => month === 6 && day === 21 && hour === 12);
    expect(scenario.weather.at(noon?.endMs ?? 0).airC).toBeCloseTo(noon?.airC ?? 0, 6);
    expect(scenario.repairs.length).toBeGreaterThan(0);
    for (const repair of scenario.repairs) expect(repair).toMatch(/year\.epw: \S/);
  });

  it('takes its weather from a CSV file by a map, and tells the faults of one that is none', () => {
    const map = {
      time: { column: 'time' },
      air: { column: 'air', unit: 'C' },
      humidity: { column: 'damp', unit: '%' },
      wind: { column: 'wind', unit: 'm/s' },
      irradiance: { column: 'sun', unit: 'W/m2' },
    };
    const lines = hours.map(({ endMs, airC, humidityPercent, windMs, globalWM2 }) =>
      [new Date(endMs).toISOString(), airC, humidityPercent, windMs, globalWM2].join(','),
    );
    writeFileSync(folder.file('year.csv'), ['time,air,damp,wind,sun', ...lines, ''].join('\n'));
    const scenario = good(change('weather', { csv: 'year.csv', map }));
    expect(scenario.weather.at(hours[5000]?.endMs ?? 0).airC).toBeCloseTo(hours[5000]?.airC ?? 0, 6);
    const other = read(
      change('weather', { csv: 'year.csv', map: { ...map, wind: { column: 'gale', unit: 'm/s' } } }),
    );
    expect(other.ok ? 'taken' : other.faults[0]).toMatch(/year\.csv: .*gale/);
  });

  const bad: readonly (readonly [string, string, RegExp])[] = [
    ['nothing', '', /found an empty file; allowed: the keys of a scenario/],
    ['another version', change('schema', 2), /s\.yaml:1: schema: found 2; allowed: 1$/],
    [
      'a key that nobody knows',
      change('wether', {}),
      /wether: found an unknown key; allowed: weather, perhaps/,
    ],
    [
      'a day that is none',
      change('startsAt', '2031-02-30'),
      /startsAt: found "2031-02-30"; allowed: a local day/,
    ],
    [
      'a kind of day that is none',
      change('weather', { kinds: ['purple'] }),
      /weather\.kinds\.0: found "purple"/,
    ],
    ['two kinds of weather', change('weather', { kinds: ['clear'], epw: 'x' }), /one of kinds, epw and csv/],
    ['a CSV file without a map', change('weather', { csv: 'x.csv' }), /csv and map together/],
    [
      'a weather file that is not there',
      change('weather', { epw: 'gone.epw' }),
      /gone\.epw: the weather file cannot/,
    ],
    [
      'a trait that nobody knows',
      change('traits', { contactWM2: 1 }),
      /traits\.contactWM2: found an unknown key; allowed: contactWM2K, perhaps/,
    ],
    [
      'a trait beyond its range',
      change('traits', { contactWM2K: 10 }),
      /traits\.contactWM2K: found 10; allowed: 60 or more/,
    ],
    ['boiling water', change('water', { storeC: 120 }), /water\.storeC: found 120; allowed: 95 or less/],
    ['a profile that nobody has', change('draw', { profile: 'palace' }), /draw\.profile: found "palace"/],
    [
      'a fault that nobody knows',
      change('faults', [{ name: 'gremlin' }]),
      /faults\.0\.name: found "gremlin"/,
    ],
    [
      'a fault without its channel',
      change('faults', [{ name: 'sensor-open' }]),
      /faults\.0\.channel: .*needs a channel/,
    ],
    [
      'a size beyond its range',
      change('faults', [{ name: 'half-flow', size: 2 }]),
      /faults\.0\.size: found 2; .*0 to 1/,
    ],
    [
      'a time that is none',
      change('faults', [{ name: 'pump-dead', from: '9:00' }]),
      /faults\.0\.from: found "9:00"/,
    ],
    [
      'a sensor that the site has not',
      change('faults', [{ name: 'sensor-open', channel: 'reservoirC' }]),
      /faults\.0: quillhaven-wash-house has no sensor reservoirC/,
    ],
    ['a site that is not there', change('site', 'nowhere.yaml'), /nowhere\.yaml: found no such file/],
  ];
  it.each(bad)('is refused with %s', (_, text, words) => {
    const result = read(text);
    expect(result.ok ? 'taken' : result.faults.join('\n')).toMatch(words);
  });

  it('is refused where it silences a topic of a serial line', () => {
    writeSite(folder.file('site.yaml'), serialContent('/dev/null'));
    const result = read(
      `schema: 1\ntitle: t\nsite: site.yaml\nfaults: [{ name: topic-silent, channel: panOutletC }]\n`,
    );
    expect(result.ok ? 'taken' : result.faults[0]).toContain('on a serial line');
  });

  it('names the line of a fault in a list', () => {
    const result = read(whole.replace('size: 0.4', 'size: 4'));
    expect(result.ok ? 'taken' : result.faults[0]).toMatch(/s\.yaml:11: faults\.0\.size/);
    const unknown = read(whole.replace('other: storeTopC', 'othr: storeTopC'));
    expect(unknown.ok ? 'taken' : unknown.faults[0]).toMatch(
      /s\.yaml:12: faults\.1\.othr: found an unknown key; allowed: other/,
    );
  });
});
