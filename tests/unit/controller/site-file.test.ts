import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatSiteFault, readSiteFile, type SiteFault } from '../../../controller/site-file.ts';
import { type TemporaryFolder, temporaryFolder } from '../../support/temporary.ts';

const demoFile = new URL('../../../sim/scenarios/quillhaven-wash-house.yaml', import.meta.url);
const demo = readFileSync(demoFile, 'utf8');

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('site');
});
afterAll(() => folder.remove());

function faultsOf(content: string | Uint8Array): SiteFault[] {
  const path = folder.file('site.yaml');
  writeFileSync(path, content);
  const read = readSiteFile(path);
  return read.ok ? [] : read.faults;
}

/** Line on which the demo's file has a text, counted from 1. */
const lineOf = (text: string) => demo.slice(0, demo.indexOf(text)).split('\n').length;

/** Replaces a text of the demo's file that must be there. */
function changed(from: string, to: string): string {
  expect(demo).toContain(from);
  return demo.replace(from, to);
}

const sensorsLine = lineOf('\nsensors:') + 1;

/** What is changed in the demo's file, and the fault that must be told: line, key, found, allowed. */
const oneFault: [string, string, string, number, string, RegExp, RegExp][] = [
  [
    'an unknown key',
    'lossWK: 6',
    'losWK: 6',
    lineOf('lossWK'),
    'store.losWK',
    /unknown key/,
    /^lossWK, perhaps/,
  ],
  [
    'an unknown section',
    'pump:',
    'pumpe: 1\npump:',
    lineOf('pump:'),
    'pumpe',
    /unknown key/,
    /^pump, perhaps/,
  ],
  [
    'an unknown channel',
    '  windMs:',
    '  windKmh:',
    lineOf('windMs'),
    'sensors.windKmh',
    /unknown key/,
    /windMs/,
  ],
  [
    'a key of nothing known',
    'pump:',
    'zzzzzzzz: 1\npump:',
    lineOf('pump:'),
    'zzzzzzzz',
    /unknown key/,
    /^schema, name/,
  ],
  [
    'a word for a number',
    'ratedPowerW: 60',
    'ratedPowerW: sixty',
    lineOf('ratedPowerW'),
    'pump.ratedPowerW',
    /"sixty"/,
    /a number/,
  ],
  [
    'a number for a text',
    'title: Quillhaven wash-house',
    'title: 7',
    lineOf('title'),
    'title',
    /^7$/,
    /a text/,
  ],
  [
    'an impossible value',
    'lossWK: 6',
    'lossWK: 600',
    lineOf('lossWK'),
    'store.lossWK',
    /^600$/,
    /500 or less/,
  ],
  [
    'not a number',
    'waterDepthM: 0.04',
    'waterDepthM: .nan',
    lineOf('waterDepthM'),
    'pan.waterDepthM',
    /NaN/,
    /a number/,
  ],
  [
    'too low a value',
    'linerLimitC: 85',
    'linerLimitC: 8.5',
    lineOf('linerLimitC'),
    'pan.linerLimitC',
    /^8.5$/,
    /40 or more/,
  ],
  [
    'an unknown unit',
    'unit: L/min',
    'unit: furlong',
    lineOf('unit: L/min'),
    'sensors.flowLMin.unit',
    /"furlong"/,
    /L\/min, L\/s, L\/h, m3\/h, gal\/min/,
  ],
  [
    'a unit of another quantity',
    'unit: L/min',
    'unit: kW',
    lineOf('unit: L/min'),
    'sensors.flowLMin.unit',
    /"kW"/,
    /one of L\/min, L\/s, L\/h, m3\/h, gal\/min/,
  ],
  [
    'an unknown zone',
    'Atlantic/Azores',
    'Atlantic/Atlantis',
    lineOf('timeZone'),
    'timeZone',
    /Atlantis/,
    /IANA/,
  ],
  [
    'an unknown kind of link',
    'kind: mqtt',
    'kind: pigeon',
    lineOf('kind: mqtt'),
    'link.kind',
    /"pigeon"/,
    /mqtt, serial/,
  ],
  ['a missing key', '  grossAreaM2: 12.4\n', '', lineOf('pan:'), 'pan.grossAreaM2', /nothing/, /a number/],
  [
    'a missing section',
    demo.slice(demo.indexOf('pump:'), demo.indexOf('store:')),
    '',
    2,
    'pump',
    /nothing/,
    /a section/,
  ],
  ['an empty section', 'publish: {}', 'publish:', lineOf('publish'), 'publish', /nothing/, /a section/],
  [
    'a list for a section',
    'publish: {}',
    'publish: [1, 2]',
    lineOf('publish'),
    'publish',
    /a list of 2/,
    /a section/,
  ],
  [
    'a name at the broker without a password',
    'broker: { host: 127.0.0.1, port: 0 }',
    'broker: { username: roof }',
    lineOf('\nbroker:') + 1,
    'broker',
    /./,
    /username and passwordFile both, or neither/,
  ],
  [
    'a password of the broker without a name',
    'broker: { host: 127.0.0.1, port: 0 }',
    'broker: { passwordFile: secret.txt }',
    lineOf('\nbroker:') + 1,
    'broker',
    /./,
    /username and passwordFile both, or neither/,
  ],
  [
    'a date that is none',
    'to: 04-30',
    'to: 04-31x',
    lineOf('frostSeason'),
    'frostSeason.to',
    /04-31x/,
    /month and day/,
  ],
  [
    'a wildcard topic',
    'outputsTopic: flatwater',
    'outputsTopic: +',
    lineOf('outputsTopic'),
    'link.outputsTopic',
    /\+/,
    /without \+ or #/,
  ],
  [
    'a pan too wide for its sheet',
    'wettedAreaM2: 12',
    'wettedAreaM2: 13',
    lineOf('wettedAreaM2'),
    'pan.wettedAreaM2',
    /^13$/,
    /at most grossAreaM2, 12.4/,
  ],
  [
    'too little room in the store',
    'headroomL: 520',
    'headroomL: 90',
    lineOf('store:'),
    'store.headroomL',
    /^90$/,
    /at least 480.0/,
  ],
  [
    'a setting out of range',
    'drainTimeS: 900',
    'drainTimeS: 9',
    lineOf('drainTimeS'),
    'settings.drainTimeS',
    /^9$/,
    /30 or more/,
  ],
  [
    'settings that do not go together',
    'fillTimeoutS: 2100',
    'fillTimeoutS: 1600',
    lineOf('fillTimeS'),
    'settings.fillTimeS',
    /^1500$/,
    /1.2 times the fill time/,
  ],
  [
    'an expiry shorter than three steps',
    'outputExpiryS: 60',
    'outputExpiryS: 14',
    lineOf('control:'),
    'control.outputExpiryS',
    /^14$/,
    /at least 15/,
  ],
  [
    'a sensor without an address',
    'windMs: { topic: flatwater/quillhaven-wash-house/device/readings, ',
    'windMs: { ',
    lineOf('windMs'),
    'sensors.windMs',
    /a section/,
    /a topic/,
  ],
  [
    'no sensor of the store',
    '  storeBottomC:',
    '  reservoirC:',
    sensorsLine,
    'sensors',
    /a section/,
    /storeBottomC/,
  ],
];

describe('a site file', () => {
  it('that is right gives the site', () => {
    const read = readSiteFile(demoFile.pathname);
    expect(read).toMatchObject({ ok: true, site: { name: 'quillhaven-wash-house', link: { kind: 'mqtt' } } });
  });

  it.each(oneFault)('with %s is refused with its line', (_, from, to, line, key, found, allowed) => {
    const faults = faultsOf(changed(from, to));
    expect(faults.map((fault) => [fault.line, fault.key])).toEqual([[line, key]]);
    expect(faults[0]?.found).toMatch(found);
    expect(faults[0]?.allowed).toMatch(allowed);
  });

  const broken: [string, string | Uint8Array, number, RegExp][] = [
    ['a tab', changed('  grossAreaM2', '\tgrossAreaM2'), lineOf('grossAreaM2'), /a tab/],
    ['a key twice', `${demo}\nname: other`, demo.split('\n').length + 1, /second time/],
    ['an open bracket', changed('from: 10-15, ', 'from: [10-15, '), lineOf('frostSeason'), /broken YAML/],
    ['two documents', `${demo}\n---\na: 1`, demo.split('\n').length + 1, /second document/],
    ['nothing in it', '# nothing\n', 0, /empty file/],
    ['only a word in it', 'hello', 0, /no section/],
    ['bytes that are no text', new Uint8Array([0x61, 0x3a, 0x20, 0xff, 0xfe]), 0, /no UTF-8/],
    ['far too much in it', `a: ${'x'.repeat(300_000)}`, 0, /bytes/],
  ];
  it.each(broken)('with %s is refused', (_, content, line, found) => {
    const faults = faultsOf(content);
    expect(faults[0]?.line).toBe(line);
    expect(faults[0]?.found).toMatch(found);
  });

  it('with a key twice has that key named', () => {
    expect(faultsOf(`${demo}\nplumbing: reservoir`)).toMatchObject([
      { key: 'plumbing', allowed: 'each key once' },
    ]);
  });

  it('whose anchors multiply is refused, not expanded', () => {
    const rows = Array.from(
      { length: 30 },
      (_, row) => `a${row + 1}: &a${row + 1} [*a${row}, *a${row}, *a${row}]`,
    );
    const faults = faultsOf(['a0: &a0 [x]', ...rows].join('\n'));
    expect(faults).toMatchObject([{ line: 0, found: expect.stringMatching(/anchors/) }]);
  });

  it('with keys that mean something to JavaScript is refused', () => {
    expect(faultsOf(`${demo}\n__proto__: { a: 1 }\nconstructor: 2`).map(({ key }) => key)).toEqual([
      '__proto__',
      'constructor',
    ]);
  });

  it('that is not there, or is a folder, is refused', () => {
    mkdirSync(folder.file('folder'));
    const foundAt = (path: string) => readSiteFile(path).ok || formatSiteFault(firstFault(path));
    expect(foundAt(folder.file('none.yaml'))).toMatch(/none.yaml: found no such file; allowed: a YAML file/);
    expect(foundAt(folder.file('folder'))).toMatch(/found a folder/);
  });

  it('with many faults has all of them named, in order', () => {
    const content = changed('grossAreaM2: 12.4', 'grossAreaM2: wide')
      .replace('ratedFlowLMin: 24', 'ratedFlowLMin: -1')
      .replace('unit: mm', 'unit: miles')
      .replace('control:', 'kontrol:');
    expect(faultsOf(content).map(({ key }) => key)).toEqual([
      'pan.grossAreaM2',
      'pump.ratedFlowLMin',
      'sensors.panLevelMm.unit',
      'kontrol',
    ]);
  });
});

function firstFault(path: string): SiteFault {
  const read = readSiteFile(path);
  if (read.ok) throw new Error('there is no fault');
  return read.faults[0] as SiteFault;
}
