import { describe, expect, it } from 'vitest';
import { isState } from '../../../controller/engine/check-state.ts';
import { learntMeaning } from '../../../controller/engine/learnt.ts';
import { initialState } from '../../../controller/engine/state.ts';
import { disturb } from './rig.ts';

type Path = readonly string[];

const initial = initialState();
const sample = { value: 20, atMs: 5 };
const alarm = {
  ...{ changingMs: null, active: true, acknowledged: false, raisedMs: 5, activeSinceMs: 5, returnedMs: null },
  ...{ repeats: 0, head: 'sensor-failed', shelvedUntilMs: null, shelvedUntilUtcMs: null },
  ...{ values: { storeC: 80, maximumC: 80 }, text: 'Hot.' },
};

const channel = { arrivedMs: 5, changedMs: 5, scatter: 0, unreadable: 1, cause: null };
const doubt = { cause: 'stuck', by: 'itself', provenMs: 5 };

/** A state in which every slot holds something, as far as one state can. */
const full = {
  ...initial,
  localDay: '2031-06-21',
  sensing: {
    panOutletC: { ...channel, recent: [sample, sample, sample], cause: 'unreadable' },
    ambientC: { ...channel, recent: [] },
  },
  watch: {
    ...initial.watch,
    evidence: { 'sheet-outlet': 0.5 },
    doubts: { ambientC: doubt, panOutletC: { ...doubt, by: 'sheet-outlet' } },
    still: { ambientC: { lowC: 5, highC: 6 } },
  },
  phase: {
    name: 'emptying',
    sinceMs: 5,
    cause: { code: 'operator-empty', values: { leftMin: 5, other: 6 } },
  },
  gain: { lowC: 20, sinceMs: 5 },
  pump: { ...initial.pump, sinceMs: 5, startsMs: [1, 2, 3] },
  frost: { ...initial.frost, latched: 'frost-blind', fall: { sinceMs: 5, fromC: 6, fallsKS: [1, 2, 3] } },
  harvest: { ...initial.harvest, airMeanC: 15, airFellFromC: 18, airCameBack: true },
  airLows: { todayC: 5, daysC: [1, 2, 3] },
  meter: { ...initial.meter, night: { sumKMs: 5, forMs: 5 } },
  failure: { count: 1, cause: 'dry-running' },
  operator: { lease: { kind: 'rest', untilMs: 5 }, seen: ['one-request', 'another-one'] },
  alarms: { 'store-hot': alarm, 'sensor-failed': { ...alarm, head: null } },
  learnt: Object.fromEntries(Object.keys(learntMeaning).map((name) => [name, 5])),
};

function paths(json: unknown, before: Path = []): Path[] {
  const inner = typeof json === 'object' && json !== null ? Object.entries(json) : [];
  return [before, ...inner.flatMap(([key, value]) => paths(value, [...before, key]))];
}

function at(path: Path): unknown {
  return path.reduce<unknown>((json, key) => (json as Record<string, unknown>)[key], full);
}

/** What no field takes that holds such a value. */
function strangersTo(value: unknown): readonly unknown[] {
  if (typeof value === 'number') return [undefined, true, '7', Number.NaN, Number.POSITIVE_INFINITY, [], {}];
  if (typeof value === 'string') return [undefined, true, 7, [], {}];
  if (typeof value === 'boolean') return [undefined, null, 0, 1, 'true', [], {}];
  if (value === null) return [undefined, true, [], {}];
  return Array.isArray(value) ? [undefined, null, true, 7, 'list', {}] : [undefined, true, 7, 'record', []];
}

const changed = (path: Path, value: unknown) => isState(disturb(full, path, value));

describe('a state', () => {
  it('is one in which every slot holds what belongs there', () => {
    expect(isState(full)).toBe(true);
    expect(isState(initialState())).toBe(true);
    expect(isState(JSON.parse(JSON.stringify(full)))).toBe(true);
  });

  it.each(paths(full))('with a stranger at %s %s %s %s %s is none', (...path) => {
    for (const stranger of strangersTo(at(path)))
      expect([stranger, changed(path, stranger)]).toEqual([stranger, false]);
  });

  it.each([
    ['runMs'],
    ['sensing', 'panOutletC', 'scatter'],
    ['meter', 'estimatedJ'],
    ['meter', 'filledL'],
    ['meter', 'night', 'forMs'],
    ['harvest', 'clearFraction'],
    ['harvest', 'lostJ'],
    ['flow', 'kind'],
    ['flow', 'smoothedMs'],
    ['upkeep', 'lostMs'],
    ['upkeep', 'lackingTimes'],
    ['upkeep', 'restContact', 'forMs'],
    ['sensing', 'panOutletC', 'unreadable'],
    ['water', 'drainedMs'],
    ['water', 'emptyingMs'],
    ['water', 'fillStoreMs'],
    ['failure', 'count'],
    ['alarms', 'store-hot', 'repeats'],
    ...['heatHomeJ', 'heatLostJ', 'electricityJ', 'pumpRunS', 'starts', 'fills'].flatMap((name) => [
      ['meter', 'total', name],
      ['meter', 'dayStart', name],
    ]),
  ])('counts from 0 on at %s %s %s', (...path) => {
    expect(changed(path, 0)).toBe(true);
    expect(changed(path, 0.5)).toBe(true);
    expect(changed(path, -0.5)).toBe(false);
  });

  it.each([
    ['localDay'],
    ['sensing', 'panOutletC', 'cause'],
    ['water', 'fillStoreC'],
    ['water', 'emptyingPanC'],
    ['water', 'trendC'],
    ['gain'],
    ['harvest', 'gainW'],
    ['harvest', 'dryC'],
    ['harvest', 'lookedMs'],
    ['harvest', 'airMeanC'],
    ['harvest', 'airFellFromC'],
    ['harvest', 'hourJ'],
    ['harvest', 'dayJ'],
    ['frost', 'latched'],
    ['frost', 'warmMs'],
    ['frost', 'keepWarmMs'],
    ['failure', 'cause'],
    ['operator', 'lease'],
    ['meter', 'rateW'],
    ['alarms', 'store-hot', 'head'],
    ['alarms', 'store-hot', 'changingMs'],
    ['alarms', 'store-hot', 'shelvedUntilMs'],
    ['alarms', 'store-hot', 'shelvedUntilUtcMs'],
    ...Object.keys(initialState().timers).map((name) => ['timers', name]),
  ])('may know nothing at %s %s %s', (...path) => {
    expect(changed(path, null)).toBe(true);
  });

  it.each([
    [
      ['speed', 'direction'],
      [-1, 0, 1],
      [2, -2, 0.5],
    ],
    [
      ['speed', 'fraction'],
      [0, 1],
      [-0.01, 1.01],
    ],
    [
      ['operator', 'lease', 'confirmed'],
      [true, false, undefined],
      [1, null],
    ],
    [
      ['outputs', 'pumpFraction'],
      [0, 0.5, 1],
      [-0.01, 1.01, null],
    ],
    [
      ['meter', 'rateW'],
      [-1e12, 0, 1e12],
      [-1.001e12, 1.001e12],
    ],
    [
      ['water', 'level'],
      ['empty', 'part', 'full', 'unknown'],
      ['half', null],
    ],
    [
      ['operator', 'lease', 'kind'],
      ['run-pump', 'empty', 'rest', 'commission'],
      ['automatic', null],
    ],
    [['frost', 'latched'], ['frost-measured', 'frost-trend', 'frost-blind', null], ['frost-waiting-release']],
    [
      ['failure', 'cause'],
      ['dry-running', 'no-flow', 'drain-stands-open', 'fill-failed', 'water-lost', null],
      ['frost-measured'],
    ],
    [
      ['pump', 'startsMs'],
      [[], [1]],
      [[1, 'two'], ['one', 2], { length: 0 }],
    ],
    [
      ['operator', 'seen'],
      [[], ['one']],
      [
        ['one', 2],
        [1, 'two'],
      ],
    ],
    [
      ['watch', 'doubts', 'ambientC', 'cause'],
      ['stuck', 'noisy', 'disagrees'],
      ['stale', null],
    ],
    [
      ['watch', 'doubts', 'ambientC', 'by'],
      ['itself', 'store-order'],
      ['windows', null],
    ],
    [['watch', 'doubts'], [{}], [{ windows: doubt }]],
    [['watch', 'evidence'], [{}], [{ windows: 0.5 }]],
    [['frost', 'fall'], [null], [7]],
    [['meter', 'night'], [null], [7]],
    [['sensing'], [{}], [{ windows: full.sensing.ambientC }]],
    [['alarms'], [{}], [{ windows: alarm }]],
    [['learnt'], [{}], [{ windowsMs: 5 }]],
    [['version'], [], [full.version - 1, full.version + 1]],
  ] as const)('takes at %j %j, but not %j', (path, some, others) => {
    for (const value of some) expect([value, changed(path, value)]).toEqual([value, true]);
    for (const value of others) expect([value, changed(path, value)]).toEqual([value, false]);
  });

  it('has a heat dump where the loop has one, and then a whole one', () => {
    const dump = { wanted: true, failed: false, sinceMs: 5, fromC: 60 };
    for (const value of [undefined, dump, { ...dump, sinceMs: null, fromC: null }])
      expect([value, changed(['heat', 'dump'], value)]).toEqual([value, true]);
    for (const value of [null, true, 7, 'dump', []])
      expect([value, changed(['heat', 'dump'], value)]).toEqual([value, false]);
    for (const [key, value] of Object.entries(dump))
      for (const stranger of strangersTo(value)) {
        const broken = { ...dump, [key]: stranger };
        expect([broken, changed(['heat', 'dump'], broken)]).toEqual([broken, false]);
      }
    expect([true, false, undefined].map((on) => changed(['outputs', 'heatDumpOn'], on))).not.toContain(false);
    for (const stranger of [null, 0, 1, 'true', [], {}])
      expect([stranger, changed(['outputs', 'heatDumpOn'], stranger)]).toEqual([stranger, false]);
  });

  it.each([
    [{ name: 'empty', sinceMs: 5, afterNoGain: false }, ['sinceMs', 'afterNoGain']],
    [{ name: 'circulating', sinceMs: 5, afterFill: true }, ['sinceMs', 'afterFill']],
    [{ name: 'filling', sinceMs: 5 }, ['sinceMs']],
    [{ name: 'resting', sinceMs: 5 }, ['sinceMs']],
    [{ name: 'stopped', sinceMs: 5 }, ['sinceMs']],
    [full.phase, ['sinceMs', 'cause']],
  ])('is in the phase %o only with %j', (phase, needed) => {
    expect(changed(['phase'], phase)).toBe(true);
    for (const key of needed) expect(changed(['phase'], { ...phase, [key]: undefined })).toBe(false);
    expect(changed(['phase'], { ...phase, name: 'boiling' })).toBe(false);
  });
});
