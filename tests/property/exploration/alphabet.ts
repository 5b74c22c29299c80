import type { Channel } from '../../../shared-types/channels.ts';
import type { EngineInput, Feedback, Operation } from '../../../shared-types/engine.ts';
import type { RawReading, RawReadings } from '../../../shared-types/readings.ts';
import type { Site } from '../../../shared-types/site.ts';

/** One thing that may happen to the loop: what is read, what is asked, and how much time passes. */
export interface Event {
  readonly name: string;
  readonly readings: RawReadings;
  readonly feedback: Feedback | null;
  readonly operation: Operation | null;
  /** Null is a restart. */
  readonly elapsedMs: number | null;
}

type Values = Partial<Record<Channel, number | null>>;
type Class = readonly [string, Values];

/** The first five are the few of a site with many other classes. */
const pans: readonly Class[] = [
  ['cold pan', { panSheetC: 2, panOutletC: 2, ambientC: 1 }],
  ['mild pan', { panSheetC: 20.5, panOutletC: 20.5, ambientC: 15 }],
  ['warm pan', { panSheetC: 45, panOutletC: 45, ambientC: 15 }],
  ['hot pan', { panSheetC: 75, panOutletC: 75, ambientC: 15 }],
  ['no pan in frost', { panSheetC: null, panOutletC: null, ambientC: 1 }],
  ['no pan', { panSheetC: null, panOutletC: null, ambientC: 15 }],
  ['no pan and no air', { panSheetC: null, panOutletC: null, ambientC: null }],
];
const mild = 'mild store';
const frosty = 'frosty store';
const stores: readonly Class[] = [
  [mild, { storeBottomC: 20, storeTopC: 25 }],
  ['full store', { storeBottomC: 40, storeTopC: 62 }],
  [frosty, { storeBottomC: 3, storeTopC: 25 }],
  ['no store', { storeBottomC: null, storeTopC: null }],
];
const levels: readonly Class[] = [
  ['no level', { panLevelMm: null }],
  ['empty pan', { panLevelMm: 0 }],
  ['full pan', { panLevelMm: 40 }],
];
const flows: readonly Class[] = [
  ['no flow', { flowLMin: 0 }],
  ['flow', { flowLMin: 20 }],
];
const nothing: readonly Class[] = [['', {}]];

const says = (drainOpen: boolean): Feedback => ({ pumpFraction: 1, drainOpen, ageMs: 0 });

/** Short against every delay, and longer than all but the fill timeout; within what the outputs outlive. */
const elapsedMs = { shortly: 5000, later: 30_000 } as const;
const operations: readonly Operation[] = [
  { kind: 'run-pump', minutes: 5 },
  { kind: 'rest', minutes: 5 },
  { kind: 'empty' },
  { kind: 'automatic' },
];

/**
 * Everything that may happen at a site, out of a few classes of each reading.
 *
 * @param whole - False leaves out some classes at a site with many.
 */
export function alphabetOf(site: Site, whole: boolean): readonly Event[] {
  const { sensors, drain } = site;
  const few = !whole && (sensors.panLevelMm !== undefined || drain === 'drain-valve');
  const weathers = cross(
    cross(few ? pans.slice(0, 5) : pans, few ? stores.filter(([name]) => name !== frosty) : stores),
    cross(sensors.panLevelMm ? levels : nothing, sensors.flowLMin ? flows : nothing),
  );
  const heard = drain === 'drain-valve' && sensors.panLevelMm === undefined ? [says(true), says(false)] : [];
  const events: Event[] = [];
  for (const [name, values] of weathers)
    for (const feedback of [null, ...(whole || name.includes(mild) ? heard : [])])
      for (const ms of Object.values(elapsedMs))
        events.push({ name, readings: readingsOf(values), feedback, operation: null, elapsedMs: ms });
  return [...events, ...rarer(weathers)];
}

/** What is asked, restarts, and an hour unseen: each with the plainest weather of each class of pan. */
function rarer(weathers: readonly Class[]): Event[] {
  const plain = new Map<string, Class>();
  for (const weather of weathers) {
    const [pan = ''] = weather[0].split(',');
    // The last of a kind has a full pan and a flow.
    if (weather[0].includes(mild)) plain.set(pan, weather);
  }
  return [...plain.values()].flatMap(([name, values]) => {
    const same = { name, readings: readingsOf(values), feedback: null };
    return [
      { ...same, operation: null, elapsedMs: null },
      { ...same, operation: null, elapsedMs: 3_600_000 },
      ...operations.map((operation) => ({ ...same, operation, elapsedMs: elapsedMs.shortly })),
    ];
  });
}

function cross(some: readonly Class[], others: readonly Class[]): Class[] {
  return some.flatMap(([name, values]) =>
    others.map(([other, more]): Class => [`${name}, ${other}`, { ...values, ...more }]),
  );
}

function readingsOf(values: Values): RawReadings {
  const reading = (value: number | null): RawReading =>
    value === null ? { value, ageMs: 0, fault: 'open-circuit' } : { value, ageMs: 0 };
  return Object.fromEntries(
    Object.entries(values).map(([channel, value]) => [channel, reading(value ?? null)]),
  );
}

/**
 * The event as two steps: the first lets the median of three see the new readings a second time in the next, which
 * then counts.
 */
export function inputsOf(event: Event, id: string): readonly [EngineInput, EngineInput] {
  const { readings, feedback, operation, elapsedMs: lastMs } = event;
  const same = { nowMs: Date.UTC(2031, 5, 21, 12), localDay: '2031-06-21', readings, feedback };
  const request = operation === null ? null : { id, ageMs: 0, lifeMs: 60_000, operation };
  const first = { ...same, elapsedMs: lastMs === null ? null : 1000, request: null };
  return [first, { ...same, elapsedMs: lastMs ?? 1000, request }];
}
