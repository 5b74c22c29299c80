import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { panVolumeL, siteSchema } from '../../../shared-types/site.ts';
import { demoContent, serialContent, siteOf } from '../../support/sites.ts';
import { schemaPath, siteJsonSchema } from '../../support/write-site-schema.ts';

type Content = Record<string, unknown>;
const section = (name: string, changes: Content) => ({
  [name]: { ...(demoContent()[name] as Content), ...changes },
});
const sensor = (name: string, changes: Content) => {
  const sensors = demoContent()['sensors'] as Record<string, Content>;
  return { sensors: { ...sensors, [name]: { ...sensors[name], ...changes } } };
};
const without = (part: Content, ...names: string[]) =>
  Object.fromEntries(Object.entries(part).filter(([name]) => !names.includes(name)));
const sensorsWithout = (...names: string[]) => ({
  sensors: without(demoContent()['sensors'] as Content, ...names),
});

/** For each rule between parts of a site: what breaks it, and the path that is named. */
const broken: [string, Content, string][] = [
  ['wetted within gross area', demoContent(section('pan', { wettedAreaM2: 12.5 })), 'pan.wettedAreaM2'],
  ['a low outlet and its drain', demoContent({ outlet: 'low', drain: 'drain-pump' }), 'drain'],
  ['a high outlet and its drain', demoContent({ drain: 'pump-stop' }), 'drain'],
  ['a corner outlet without drain', demoContent({ outlet: 'corner' }), 'drain'],
  ['room for the pan in the store', demoContent(section('store', { headroomL: 479 })), 'store.headroomL'],
  ['water for the pan in the store', demoContent(section('store', { volumeL: 479 })), 'store.volumeL'],
  ['a broker for the link', without(demoContent({ publish: { url: 'mqtt://h' } }), 'broker'), 'link.url'],
  ['a broker for monitors', { ...serialContent('port'), publish: {} }, 'publish.url'],
  ['units of the channel', demoContent(sensor('windMs', { unit: 'C' })), 'sensors.windMs.unit'],
  ['topics over mqtt', demoContent(sensor('windMs', { topic: undefined })), 'sensors.windMs'],
  [
    'keys over a serial line',
    { ...serialContent('port'), sensors: demoContent()['sensors'] },
    'sensors.windMs',
  ],
  ['limits in order', demoContent(sensor('windMs', { least: 5, most: 5 })), 'sensors.windMs.least'],
  ['a sensor at the store bottom', demoContent(sensorsWithout('storeBottomC')), 'sensors'],
  ['a sensor in the pan', demoContent(sensorsWithout('panOutletC', 'panSheetC')), 'sensors'],
  [
    'an expiry of three steps',
    demoContent({ control: { stepS: 10, outputExpiryS: 29 } }),
    'control.outputExpiryS',
  ],
  [
    'settings that go together',
    demoContent({ settings: { stopDifferenceK: 9 } }),
    'settings.stopDifferenceK',
  ],
];

describe('a site', () => {
  it.each(broken)('keeps the rule: %s', (_, content, path) => {
    const paths = siteSchema.safeParse(content).error?.issues.map((issue) => issue.path.join('.'));
    expect(paths).toContain(path);
  });

  const kept: [string, Content][] = [
    ['one sensor in the pan', demoContent(sensorsWithout('panSheetC'))],
    ['a low outlet', demoContent({ outlet: 'low', drain: 'pump-stop' })],
    [
      'a corner outlet without room in the store',
      demoContent({ outlet: 'corner', drain: 'none', ...section('store', { headroomL: 0 }) }),
    ],
    [
      'a reservoir, whose store need not take the pan',
      demoContent({ plumbing: 'reservoir', ...section('store', { headroomL: 0 }) }),
    ],
    ['just the room that the pan needs', demoContent(section('store', { headroomL: 480 }))],
    ['a serial line without any broker', serialContent('port')],
    ['an expiry of just three steps', demoContent({ control: { stepS: 10, outputExpiryS: 30 } })],
  ];
  it.each(kept)('may have %s', (_, content) => {
    expect(siteSchema.safeParse(content).error?.issues).toBeUndefined();
  });

  it('holds as much water as its area and depth say', () => {
    expect(panVolumeL(siteOf(demoContent()))).toBe(480);
  });
});

describe('the schema for editors', () => {
  it('is the one that the code makes; else: npm run schema', () => {
    expect(readFileSync(schemaPath, 'utf8')).toBe(siteJsonSchema());
  });
});
