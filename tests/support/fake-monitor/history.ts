import type { PhaseName, Totals } from '../../../shared-types/engine.ts';
import type { DayCurves, DaySummary, Outcome, PhaseSpan, ReplayReport } from '../../../shared-types/log.ts';
import type { ReasonCode } from '../../../shared-types/reasons.ts';
import { testDecision, testNowMs } from './snapshot.ts';

const hourMs = 3_600_000;
/** The test site's clock is at UTC on a summer day. */
const midnightMs = Date.UTC(2031, 5, 21);

/** Phases of the test day: hour at which each begins. */
const plan: readonly (readonly [number, PhaseName, ReasonCode])[] = [
  [0, 'empty', 'waiting-for-sun'],
  [8.5, 'filling', 'filling-for-heat'],
  [8.7, 'resting', 'waiting-start-difference'],
  [9.4, 'circulating', 'circulating-for-heat'],
  [12.1, 'resting', 'resting-no-gain'],
  [12.6, 'circulating', 'circulating-for-heat'],
  [17.2, 'resting', 'resting-no-gain'],
  [18, 'emptying', 'emptying-no-gain'],
  [18.25, 'empty', 'emptied'],
];

const sunAt = (hour: number) => Math.max(0, Math.sin(((hour - 6) / 13) * Math.PI));

/** Made-up curves of a span: a sunny day with a pause in the log and a sensor that fails for an hour. */
export function testCurves(fromMs: number, toMs: number, stepMs = 60_000): DayCurves {
  const rows: number[] = [];
  for (let atMs = fromMs; atMs < toMs; atMs += stepMs) {
    const hour = hourOf(atMs);
    if (hour < 3 || hour > 3.6) rows.push(atMs);
  }
  const column = (at: (hour: number) => number | null) => rows.map((atMs) => at(hourOf(atMs)));
  const circulating = (hour: number) => phaseAt(hour) === 'circulating';
  return {
    day: new Date(fromMs).toISOString().slice(0, 10),
    atMs: rows,
    series: {
      panOutletC: column((hour) => 14 + 36 * sunAt(hour - 0.6)),
      panSheetC: column((hour) => (hour > 14 && hour < 15 ? null : 13 + 43 * sunAt(hour))),
      panInletC: column((hour) => 15 + 24 * sunAt(hour - 1.2)),
      storeBottomC: column((hour) => 28 + 10 * Math.max(0, Math.min(1, (hour - 9) / 8))),
      storeMiddleC: column((hour) => 32 + 12 * Math.max(0, Math.min(1, (hour - 9) / 8))),
      storeTopC: column((hour) => 36 + 13 * Math.max(0, Math.min(1, (hour - 9) / 8))),
      ambientC: column((hour) => 15 + 7 * sunAt(hour - 1)),
      irradianceWM2: column((hour) => 900 * sunAt(hour) * (hour > 12 && hour < 12.6 ? 0.3 : 1)),
      flowLMin: column((hour) => (circulating(hour) ? 13.4 : 0)),
      windMs: column((hour) => 2.5 + Math.sin(hour * 2)),
    },
    pumpFraction: rows.map((atMs) => (circulating(hourOf(atMs)) ? 1 : 0)),
    heatTodayJ: rows.map((atMs) => 9e7 * Math.max(0, Math.min(1, (hourOf(atMs) - 9.4) / 8))),
    phases: spans(fromMs, toMs),
    events: [
      {
        atMs: midnightMs + 7 * hourMs,
        kind: 'controller-started',
        text: 'Run 3 of the controller began.',
        values: {},
      },
      {
        atMs: midnightMs + 14 * hourMs,
        kind: 'alarm-raised',
        text: 'The sheet sensor gives no value.',
        values: {},
      },
    ],
  };
}

const hourOf = (atMs: number) => (atMs - midnightMs) / hourMs;
const phaseAt = (hour: number) => plan.findLast(([start]) => start <= hour)?.[1] ?? 'empty';

function spans(fromMs: number, toMs: number): PhaseSpan[] {
  return plan.flatMap(([start, phase, reason], index) => {
    const startMs = Math.max(fromMs, midnightMs + start * hourMs);
    const endMs = Math.min(toMs, midnightMs + (plan[index + 1]?.[0] ?? 24) * hourMs);
    return endMs > startMs ? [{ phase, reason, fromMs: startMs, toMs: endMs }] : [];
  });
}

/** A whole day of it. */
export const testDayCurves = (day: string): DayCurves => ({
  ...testCurves(midnightMs, midnightMs + 24 * hourMs),
  day,
});

/** The last hours before the test's now. */
export const testRecent = (hours: number): DayCurves => testCurves(testNowMs - hours * hourMs, testNowMs);

/** Six weeks of made-up days up to the test's now, some odd. */
export const testDays: readonly DaySummary[] = Array.from({ length: 43 }, (_, index) => {
  const firstMs = midnightMs - (42 - index) * 24 * hourMs;
  const isToday = index === 42;
  return {
    day: new Date(firstMs).toISOString().slice(0, 10),
    steps: 17_280,
    firstMs,
    lastMs: isToday ? testNowMs : firstMs + 24 * hourMs - 5000,
    heatHomeJ: isToday ? 6.66e7 : 1.05e8 * Math.abs(Math.sin(index * 1.7)) + 4e6,
    heatLostJ: 2e6 * Math.abs(Math.cos(index)),
    electricityJ: 8.1e5,
    pumpRunS: 21_600,
    starts: 3 + (index % 4),
    fills: 1 + (index % 2),
    alarms: index % 9 === 4 ? 2 : 0,
    coveredFraction: isToday ? 0.55 : index % 11 === 6 ? 0.7163 : 1,
  };
}).filter((summary) => !summary.day.endsWith('-09'));

const totals: Totals = {
  heatHomeJ: 9e7,
  heatLostJ: 1.4e6,
  electricityJ: 8.1e5,
  pumpRunS: 21_600,
  starts: 2,
  fills: 1,
};

const logged: Outcome = {
  phase: 'circulating',
  outputs: testDecision.outputs,
  reasons: { phase: 'circulating-for-heat', pump: 'circulating-for-heat', drain: 'drain-closed-to-hold' },
  alarms: [],
  failed: [],
  total: totals,
};

const circulatingSide = { phase: 'circulating', pumpFraction: 1, drainOpen: false } as const;

/** A replay that met the same decisions, or one that did not. */
export function testReplay(day: string, same: boolean): ReplayReport {
  const side = { starts: 3, fills: 1, pumpRunS: 30_600 };
  const common = {
    day,
    lastDay: day,
    fromMs: midnightMs,
    toMs: midnightMs + 24 * hourMs - 5000,
    steps: 17_280,
    leftOut: 0,
    byField: {},
    byCause: [],
    parted: [],
    partings: 0,
    asked: { logged: side, replayed: side },
    engineThen: ['0.1.0'],
    engineNow: '0.1.0',
  };
  if (same)
    return {
      ...common,
      same,
      differences: 0,
      decidedOtherwise: 0,
      firstDifference: null,
      logged: totals,
      replayed: totals,
      remarks: [],
    };
  return {
    ...common,
    same,
    differences: 412,
    decidedOtherwise: 412,
    byField: { phase: 380, pump: 412 },
    byCause: [
      { logged: 'circulating-for-heat', replayed: 'resting-no-gain', steps: 400 },
      { logged: 'a-reason-of-another-version', replayed: 'resting-no-gain', steps: 12 },
    ],
    parted: [
      {
        fromMs: midnightMs + 12.1 * hourMs,
        toMs: midnightMs + 12.4 * hourMs,
        steps: 216,
        logged: { ...circulatingSide, reason: 'Bringing heat home.' },
        replayed: { ...circulatingSide, phase: 'resting', pumpFraction: 0, reason: 'Resting.' },
      },
    ],
    partings: 3,
    firstDifference: {
      atMs: midnightMs + 12.1 * hourMs,
      step: 8712,
      fields: ['phase', 'pump'],
      logged,
      replayed: {
        ...logged,
        phase: 'resting',
        outputs: { ...logged.outputs, pumpFraction: 0 },
        reasons: { phase: 'resting-no-gain', pump: 'resting-no-gain', drain: 'drain-closed-to-hold' },
      },
      loggedReason: 'Bringing heat home: the pan is 2.1 K above the store bottom; the pump stops at 2.0 K.',
      replayedReason: 'Resting: the pan is 2.1 K above the store bottom; the pump starts at 6.0 K.',
      input: {
        nowMs: midnightMs + 12.1 * hourMs,
        elapsedMs: 5000,
        localDay: day,
        readings: {
          panOutletC: { value: 36.1, ageMs: 1200 },
          storeBottomC: { value: 34, ageMs: 1200 },
          panSheetC: { value: null, ageMs: 1200, fault: 'open-circuit' },
        },
        feedback: { pumpFraction: 1, drainOpen: false, ageMs: 900 },
        request: null,
      },
    },
    logged: totals,
    replayed: { ...totals, heatHomeJ: 8.7e7, starts: 3 },
    remarks: ['The log pauses from 03:00 to 03:36; the replay began anew after it.'],
  };
}
