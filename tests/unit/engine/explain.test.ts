import { describe, expect, it } from 'vitest';
import { reasonText } from '../../../controller/engine/index.ts';
import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import { alarmCodes } from '../../../shared-types/alarms.ts';
import type { Decision } from '../../../shared-types/engine.ts';
import type { RawReading } from '../../../shared-types/readings.ts';
import { reasonCodes } from '../../../shared-types/reasons.ts';
import { allSensors, circulatingLoop, emptyLoop, Loop, makeSite, restingLoop } from './rig.ts';
import { contactLoop, fillingReservoir, flowLoop, hotLoop, sinkingLoop } from './watch-rig.ts';

const site = makeSite('drain-valve');
const level = makeSite('drain-valve', allSensors);
const broken: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };
const blindPan = { panOutletC: broken, panSheetC: broken, panInletC: broken };

function frostThenRelease(): Loop {
  return circulatingLoop(makeSite('corner')).set({ panSheetC: 3 }).run(20).set({ panSheetC: 30 }).run(20);
}

function blindFrost(): Loop {
  const loop = restingLoop(site)
    .set({ ...blindPan, ambientC: 2 })
    .run(60)
    .set({ ambientC: broken })
    .run(60);
  return loop.set({ ambientC: 20 }).run(60);
}

function failures(): Loop {
  const loop = circulatingLoop(level).run(60).set({ flowLMin: 0 }).until('emptying').set({ panLevelMm: 0 });
  loop.until('empty').set({ panOutletC: 40, panSheetC: 40 }).until('filling').set({ flowLMin: 20 });
  return loop.until('stopped').run(20);
}

function slowEmptying(): Loop {
  const loop = restingLoop(level, { emptyAfterMin: 10 }).until('emptying').set({ panLevelMm: 20 }).run(120);
  loop.set({ panOutletC: 3 }).run(60).set({ panLevelMm: 0 }).until('empty');
  return loop;
}

function lostWater(): Loop {
  return restingLoop(level).run(60).set({ panLevelMm: 0 }).run(20);
}

function waiting(): Loop {
  const loop = restingLoop(site, { startsPerHour: 2, leastOffS: 120, emptyAfterMin: 20 });
  loop.set({ panOutletC: 30, panSheetC: 30 }).until('circulating').run(60);
  loop
    .set({ panOutletC: 21, panSheetC: 21 })
    .until('resting')
    .set({ panOutletC: 30, panSheetC: 30 })
    .run(300);
  return loop.set({ storeBottomC: 31 }).run(3600);
}

/** Clouds come while the sun is still high, then the evening. */
function clouds(kind: 'drain-valve' | 'pump-stop'): Loop {
  const loop = circulatingLoop(makeSite(kind)).run(3000);
  for (let panC = 27; panC > 18; panC -= 0.05) loop.set({ panOutletC: panC, panSheetC: panC }).run(30);
  return loop;
}

function enoughFills(): Loop {
  const loop = restingLoop(site, { emptyAfterMin: 10, fillsPerDay: 1 }).until('emptying').until('empty');
  return loop.set({ panOutletC: 40, panSheetC: 40 }).run(2000);
}

function lateSun(): Loop {
  const loop = emptyLoop(site);
  loop.nowMs += 12 * 3_600_000;
  loop.step(null).until('empty');
  return loop.set({ panOutletC: 32, panSheetC: 32 }).run(120);
}

function heat(): Loop {
  const loop = restingLoop(site)
    .set({ panSheetC: 75 })
    .run(90)
    .set({ storeTopC: 81, panSheetC: 85 })
    .run(150);
  loop.feedback = { pumpFraction: 1, drainOpen: true, ageMs: 0 };
  return loop.run(60);
}

function operator(): Loop {
  const loop = restingLoop(site).run(60);
  loop.ask({ kind: 'rest', minutes: 5 });
  loop.ask({ kind: 'run-pump', minutes: 5 });
  loop.run(60);
  loop.ask({ kind: 'empty' });
  return loop.run(60);
}

function silent(): Loop {
  return restingLoop(site)
    .without(...allSensors, 'ambientC')
    .run(300);
}

function brokenEngine(): Loop {
  const loop = new Loop(site).step();
  loop.state = {} as typeof loop.state;
  return loop.step();
}

function lostStoreSensor(): Loop {
  return circulatingLoop(site).set({ storeBottomC: broken }).run(20);
}

function fills(): Loop {
  const loop = emptyLoop(makeSite('pump-stop')).run(20).set({ panSheetC: 28 }).run(20);
  return loop.set({ panSheetC: 40 }).until('circulating').run(60);
}

function openDrain(): Loop {
  const loop = circulatingLoop(site).run(60);
  loop.feedback = { pumpFraction: 1, drainOpen: true, ageMs: 0 };
  return loop.run(30);
}

function drainPump(): Loop {
  return emptyLoop(makeSite('drain-pump')).run(20);
}

function afterEmptying(): Loop {
  const loop = restingLoop(site, { emptyAfterMin: 10 }).until('emptying').until('empty');
  return loop.set({ panOutletC: 40, panSheetC: 40 }).run(60).set({ storeBottomC: 3 }).run(60);
}

function doubtedStore(): Loop {
  const loop = circulatingLoop(site).set({ panInletC: 26, panOutletC: 29, panSheetC: 29 });
  return loop.run(900, 10);
}

function nights(): Loop {
  const loop = restingLoop(makeSite('drain-valve', allSensors), { drainTimeS: 900 }).set({ ambientC: -15 });
  loop.ask({ kind: 'rest', minutes: 1440 });
  for (let panC = 12; panC > 5; panC -= 0.03) loop.set({ panOutletC: panC, panSheetC: panC }).step(10);
  return loop;
}

function frostNight(): Loop {
  const loop = restingLoop(site);
  loop.nowMs = Date.UTC(2031, 5, 22, 1);
  loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: loop.nowMs } };
  return loop.set({ ambientC: 1 }).run(60);
}

function outOfSeason(): Loop {
  return new Loop(makeSite('corner', undefined, { frostSeason: { from: '06-01', to: '07-01' } })).run(900);
}

function nearSeason(): Loop {
  return new Loop(makeSite('corner', undefined, { frostSeason: { from: '07-01', to: '08-01' } })).run(900);
}

function coolingNight(): Loop {
  const loop = emptyLoop(site, { nightCooling: 1 });
  loop.nowMs = Date.UTC(2031, 5, 22, 1);
  loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: loop.nowMs } };
  return loop.set({ ambientC: 25, storeBottomC: 61, storeTopC: 62 }).run(900);
}

function batch(): Loop {
  const loop = circulatingLoop(site, { batchRunning: 1, batchTemperatureC: 40 }).run(60);
  return loop.set({ panOutletC: 41, panSheetC: 41 }).until('emptying');
}

const poorContact = () => contactLoop(restingLoop(level, { emptyAfterMin: 600 }), 8, 3.2);

function commissioning(): Loop {
  const loop = new Loop(level).set({ panLevelMm: 20, flowLMin: 0 }).run(10);
  loop.ask({ kind: 'commission' });
  loop.set({ panLevelMm: 0 }).until('filling').set({ flowLMin: 20 }).run(100).set({ panLevelMm: 40 });
  return loop.until('emptying', 4500).run(20);
}

function longRest(): Loop {
  const loop = restingLoop(level);
  loop.state = { ...loop.state, pump: { ...loop.state.pump, sinceMs: loop.state.runMs - 168 * 3_600_000 } };
  return loop.run(5);
}

/** A full store and a hot liner, with a heat dump. */
function dumped(): Loop {
  const loop = circulatingLoop(makeSite('drain-valve', undefined, { heatDump: { conductanceWK: 300 } }));
  return loop.set({ panOutletC: 74, panSheetC: 75, storeBottomC: 55, storeTopC: 61 }).run(15);
}

const scenarios: readonly (() => Loop)[] = [
  doubtedStore,
  nights,
  frostNight,
  outOfSeason,
  nearSeason,
  coolingNight,
  () => hotLoop(40),
  () => flowLoop(10, 1500),
  () => sinkingLoop(1, 3),
  poorContact,
  () => fillingReservoir(500).set({ reservoirLevelMm: 20 }).run(60),
  commissioning,
  longRest,
  dumped,
  batch,
  frostThenRelease,
  blindFrost,
  failures,
  slowEmptying,
  lostWater,
  waiting,
  heat,
  operator,
  silent,
  brokenEngine,
  lostStoreSensor,
  fills,
  openDrain,
  drainPump,
  afterEmptying,
  enoughFills,
  lateSun,
  () => clouds('drain-valve'),
  () => clouds('pump-stop'),
];

let played: readonly Decision[] | undefined;

/** What all scenarios decide; played by the first test that asks, so that the tests count as what runs them. */
function decisions(): readonly Decision[] {
  played ??= scenarios.flatMap((scenario) => scenario().decisions);
  return played;
}

const reasonsTold = () => decisions().flatMap(({ reasons: { phase, pump, drain } }) => [phase, pump, drain]);

describe('reasons', () => {
  it.each(reasonCodes)('%s is reached', (code) => {
    expect(reasonsTold().some((reason) => reason.code === code)).toBe(true);
  });

  it('carry every number that their sentence speaks of', () => {
    const unsaid = reasonsTold().filter((reason) => /\?|NaN|undefined|Infinity/.test(reason.text));
    expect(unsaid.map((reason) => `${reason.code}: ${reason.text}`)).toEqual([]);
  });

  it('are one sentence or two, with a capital and a stop, in our own words for each code', () => {
    for (const { text } of reasonsTold()) expect(text).toMatch(/^[A-Z].*\.$/);
    expect(new Set(reasonCodes.map((code) => reasonText(code, {}))).size).toBe(reasonCodes.length);
  });

  it('are told without their numbers too', () => {
    expect(reasonText('waiting-fill-delay', {})).toBe(
      'Warm enough to fill for ?; the pan is filled after ?.',
    );
    expect(reasonText('waiting-fill-delay', { heldS: 119, fillDelayS: 300 })).toBe(
      'Warm enough to fill for 119 s; the pan is filled after 5 min.',
    );
    expect(reasonText('sensors-failed', { storeFailed: 1 })).toContain('The store bottom');
    expect(reasonText('sensors-failed', { panFailed: 1 })).toContain('The pan');
  });
});

describe('alarms', () => {
  const alarmsTold = () => decisions().flatMap((decision) => decision.alarms);

  it.each(alarmCodes)('%s is reached', (code) => {
    expect(alarmsTold().some((alarm) => alarm.code === code && alarm.active)).toBe(true);
  });

  it('say what they know', () => {
    for (const { text } of alarmsTold()) expect(text).toMatch(/^[A-Z][^?]*\.$/);
  });

  it.each(alarmCodes)('%s has a meaning, and no alarm explains itself, even by others', (code) => {
    const meaning = alarmCatalogue[code];
    expect([
      meaning.title,
      meaning.likelyCauses,
      meaning.consequence,
      meaning.response,
      meaning.howSoon,
    ]).not.toContain('');
    const above = (inner: typeof code, depth = 0): readonly string[] =>
      depth > alarmCodes.length
        ? [inner]
        : alarmCatalogue[inner].causes.flatMap((cause) => [cause, ...above(cause, depth + 1)]);
    expect(above(code)).not.toContain(code);
  });
});

describe('where the pan stands', () => {
  it.each([
    [7.04, 'Resting: the pan is 7.0 K above the store bottom; the pump starts at 6.0 K.'],
    [-12.66, 'Resting: the pan is 12.7 K below the store bottom; the pump starts at 6.0 K.'],
  ])('is told in words that fit the sign of %d K', (differenceK, text) => {
    expect(reasonText('resting-no-gain', { differenceK, startDifferenceK: 6 })).toBe(text);
  });
});
