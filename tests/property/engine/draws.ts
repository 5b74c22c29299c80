import fc from 'fast-check';
import { alarmCodes } from '../../../shared-types/alarms.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Feedback } from '../../../shared-types/engine.ts';
import type { RawReading, RawReadings } from '../../../shared-types/readings.ts';
import {
  type Settings,
  settingCouplings,
  settingDeclarations,
  settingNames,
} from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { allSensors, commonSensors, makeSite, quickSettings, siteKinds } from '../../unit/engine/rig.ts';

/** A number in tenths, so that small ones are as likely as large ones. */
const tenths = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 10), max: Math.round(most * 10) }).map((n) => n / 10);

/** As few sensors as a loop may have. */
const fewSensors: readonly Channel[] = ['panSheetC', 'storeBottomC'];
const hotStore = { volumeL: 800, headroomL: 500, heightM: 1.2, maximumC: 50 };

/** Every drain, each with few and with many sensors, both plumbings, with and without a frost season. */
export const siteDraw: fc.Arbitrary<Site> = fc.constantFrom(
  ...siteKinds.flatMap((kind) => [
    makeSite(kind, commonSensors),
    makeSite(kind, allSensors),
    makeSite(kind, fewSensors, { plumbing: 'reservoir' }),
    makeSite(kind, [...allSensors, 'reservoirC'], { plumbing: 'reservoir' }),
    makeSite(kind, allSensors, { frostSeason: { from: '10-01', to: '04-30' }, store: hotStore }),
    makeSite(kind, allSensors, { store: hotStore, heatDump: { conductanceWK: 300 } }),
  ]),
);

/** Makes the couplings between settings hold. */
function coupled(settings: Settings): Settings {
  const startDifferenceK = Math.max(settings.startDifferenceK, settings.stopDifferenceK + 0.5);
  return withDefaultsWhereBroken({
    ...settings,
    startDifferenceK,
    fillDifferenceK: Math.max(settings.fillDifferenceK, startDifferenceK),
    fillTimeoutS: Math.max(settings.fillTimeoutS, 1.2 * settings.fillTimeS),
    frostReleaseC: Math.max(settings.frostReleaseC, settings.frostTemperatureC + 1),
  });
}

/** Whatever rule is still broken has its settings set to their defaults, with which all rules hold. */
function withDefaultsWhereBroken(settings: Settings): Settings {
  const broken = settingCouplings.filter((rule) => !rule.holds(settings));
  if (broken.length === 0) return settings;
  const names = broken.flatMap((rule) => rule.names);
  const defaults = Object.fromEntries(names.map((name) => [name, settingDeclarations[name].default]));
  return withDefaultsWhereBroken({ ...settings, ...defaults });
}

const drawOf = (name: (typeof settingNames)[number]) =>
  tenths(settingDeclarations[name].least, settingDeclarations[name].most);

/** Any settings in range, and ones whose times are so short that a sequence meets them. */
export const settingsDraw: fc.Arbitrary<Settings> = fc
  .oneof(
    { weight: 1, arbitrary: fc.record(Object.fromEntries(settingNames.map((name) => [name, drawOf(name)]))) },
    {
      weight: 3,
      arbitrary: fc
        .record({
          startDelayS: tenths(0, 30),
          stopDelayS: tenths(0, 30),
          fillDelayS: tenths(0, 30),
          fillTimeS: tenths(20, 60),
          drainTimeS: tenths(30, 60),
          leastOnS: tenths(0, 120),
          leastOffS: tenths(0, 120),
          startsPerHour: fc.integer({ min: 1, max: 6 }),
          emptyAfterMin: tenths(5, 10),
          frostReleaseMin: tenths(5, 10),
          dryRunS: tenths(5, 20),
        })
        .map((some) => ({ ...quickSettings, fillTimeoutS: 90, ...some })),
    },
  )
  .map((settings) => coupled(settings as Settings));

type Scene = Partial<Record<Channel, number>>;

const calm: Scene = {
  panOutletC: 20,
  panSheetC: 20,
  panInletC: 20,
  storeBottomC: 20,
  storeTopC: 30,
  ambientC: 15,
  flowLMin: 0,
  panLevelMm: 0,
  pumpPowerW: 0,
};
const pumping: Scene = { flowLMin: 20, pumpPowerW: 45 };

/** Weathers and states of the loop as its sensors might see them. */
const scenes: readonly Scene[] = [
  calm,
  { ...calm, panSheetC: 60, panOutletC: 58 },
  { ...calm, panSheetC: 60, panOutletC: 40, ...pumping, panLevelMm: 20 },
  { ...calm, panSheetC: 30, panOutletC: 30, ...pumping, panLevelMm: 40 },
  { ...calm, panSheetC: 30, panOutletC: 30, panLevelMm: 40 },
  { ...calm, panSheetC: 20.5, panOutletC: 20.5, panLevelMm: 40 },
  { ...calm, panSheetC: 30, panOutletC: 30, panLevelMm: 40, flowLMin: 0.5 },
  { ...calm, panSheetC: 66, panOutletC: 65, storeTopC: 52, storeBottomC: 40, panLevelMm: 40, ...pumping },
  { ...calm, panSheetC: 3, panOutletC: 3.5, panLevelMm: 40 },
  { ...calm, panSheetC: -6, panOutletC: 1, ambientC: 1 },
  { ...calm, panSheetC: 30, panOutletC: 30, storeBottomC: 3 },
  { ...calm, panSheetC: 77, panOutletC: 74, panLevelMm: 40 },
  { ...calm, panSheetC: 77, panOutletC: 74, storeTopC: 85, storeBottomC: 70, panLevelMm: 40 },
  { ...calm, panSheetC: 77, panOutletC: 74, storeTopC: 52, storeBottomC: 45, panLevelMm: 40, ...pumping },
];

const absurd: fc.Arbitrary<RawReading | undefined> = fc.oneof(
  fc.constant(undefined),
  fc.record({ value: tenths(-100, 160), ageMs: fc.integer({ min: 0, max: 20_000 }) }),
  fc.record({ value: fc.constant(null), ageMs: fc.integer({ min: 0, max: 3000 }) }),
  fc.record({
    value: fc.constantFrom(null, 999, -999),
    ageMs: fc.constant(50),
    fault: fc.constantFrom('open-circuit' as const, 'short-circuit' as const, 'unreadable' as const),
  }),
  fc.record({
    value: fc.constantFrom(1e9, -1e9, Number.NaN, Number.POSITIVE_INFINITY),
    ageMs: fc.constant(50),
  }),
  fc.record({ value: tenths(0, 50), ageMs: fc.integer({ min: 50_000, max: 900_000 }) }),
);

const requestDraw = fc.record({
  id: fc.integer({ min: 0, max: 40 }).map((n) => `request-${n}`),
  ageMs: fc.oneof(
    { weight: 5, arbitrary: fc.constant(100) },
    { weight: 1, arbitrary: fc.integer({ min: -90_000, max: 90_000 }) },
  ),
  lifeMs: fc.constantFrom(1000, 10_000, 60_000),
  operation: fc.oneof(
    fc.record({ kind: fc.constant('run-pump'), minutes: fc.integer({ min: 1, max: 120 }) }),
    fc.record({ kind: fc.constant('rest'), minutes: fc.integer({ min: 1, max: 1440 }) }),
    fc.record({ kind: fc.constantFrom('empty', 'automatic') }),
    fc.record({ kind: fc.constant('acknowledge'), alarm: fc.constantFrom(...alarmCodes) }),
    fc.record({
      kind: fc.constant('shelve'),
      alarm: fc.constantFrom(...alarmCodes),
      minutes: fc.integer({ min: 5, max: 60 }),
    }),
  ),
});

const feedbackDraw: fc.Arbitrary<Feedback | null> = fc.option(
  fc.record({
    pumpFraction: fc.constantFrom(0, 1),
    drainOpen: fc.constantFrom(true, false, null),
    ageMs: fc.integer({ min: 0, max: 90_000 }),
  }),
);

/** A stretch of steps under the same readings. */
export interface Stretch {
  readonly readings: RawReadings;
  readonly feedback: Feedback | null;
  readonly request: unknown;
  readonly elapsedMs: number | null;
  readonly steps: number;
  readonly stepMs: number;
  readonly localDay: string;
}

function raw(scene: Scene, faults: Readonly<Record<string, RawReading | undefined>>): RawReadings {
  const whole = Object.entries(scene).map(([channel, value]) => [channel, { value, ageMs: 100 }]);
  const readings: Record<string, RawReading | undefined> = { ...Object.fromEntries(whole), ...faults };
  for (const channel of Object.keys(faults)) if (readings[channel] === undefined) delete readings[channel];
  return readings as RawReadings;
}

const channelDraw = fc.constantFrom(...allSensors);

const stretchDraw: fc.Arbitrary<Stretch> = fc
  .record({
    scene: fc.constantFrom(...scenes),
    faults: fc.oneof(
      { weight: 3, arbitrary: fc.constant({}) },
      { weight: 2, arbitrary: fc.dictionary(channelDraw, absurd, { maxKeys: 2 }) },
      { weight: 1, arbitrary: fc.dictionary(channelDraw, absurd, { minKeys: 4, maxKeys: 9 }) },
    ),
    feedback: feedbackDraw,
    request: fc.option(requestDraw, { freq: 2 }),
    elapsedMs: fc.oneof(
      { weight: 8, arbitrary: fc.constant(5000) },
      { weight: 1, arbitrary: fc.constant(null) },
      { weight: 1, arbitrary: fc.integer({ min: 0, max: 400_000 }) },
    ),
    steps: fc.integer({ min: 1, max: 24 }),
    stepMs: fc.constantFrom(1000, 5000, 5000, 10_000),
    localDay: fc.constantFrom('2031-06-21', '2031-06-21', '2031-06-22', '2031-12-31', '2032-01-01'),
  })
  .map(({ scene, faults, ...rest }) => ({ ...rest, readings: raw(scene, faults) }));

export const stretchesDraw = fc.array(stretchDraw, { minLength: 2, maxLength: 12 });
/** Shorter sequences, of which there are to be many. */
export const fewStretchesDraw = fc.array(stretchDraw, { minLength: 2, maxLength: 8 });
