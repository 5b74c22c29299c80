import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { step, stepOn } from '../../../controller/engine/index.ts';
import type { EngineInput } from '../../../shared-types/engine.ts';
import { plumbedSite } from '../../support/plants.ts';
import type { Step } from '../invariants/invariant.ts';
import { invariants } from '../invariants/table.ts';
import { judge } from './judge.ts';
import type { Life } from './life.ts';
import { type FaultKind, lifeDraw, settingsOf } from './lives.ts';
import { truths } from './truths.ts';

/** Lives that are lived in every test run; `npm run fuzz -- --pairs` goes through every ordered pair of faults. */
const numRuns = 40;

describe('a simulated loop with faults, requests, restarts and clock jumps', () => {
  it('keeps every promise, in the plant as well', { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(lifeDraw, (life) => {
        expect(judge(life, invariants, stepOn)).toBeUndefined();
      }),
      { numRuns },
    );
  });
});

describe('a loop under an engine with one thing wrong', () => {
  const site = plumbedSite('open-store', 'high-with-low-drain', 'drain-valve');
  const summer: Life = {
    site,
    settings: settingsOf(site),
    seed: 4,
    startMs: Date.UTC(2031, 5, 15, 9),
    hours: 8,
    kinds: ['clear'],
    storeC: 20,
    faults: [],
    happenings: [],
  };
  /** A pan that was filled by day and is kept full into a night of frost. */
  const frost: Life = {
    ...summer,
    startMs: Date.UTC(2031, 10, 15, 12),
    hours: 24,
    kinds: ['frost-after-sun'],
    happenings: [
      { atH: 1, what: { kind: 'request', operation: { kind: 'run-pump', minutes: 60 } } },
      { atH: 1.5, what: { kind: 'request', operation: { kind: 'rest', minutes: 1440 } } },
    ],
  };
  const broken = (name: FaultKind['name']): Life => ({
    ...summer,
    faults: [{ name, size: 0, fromH: 3, lastsH: 100 }],
  });

  const withInput =
    (change: (input: EngineInput) => EngineInput): Step =>
    (state, input, own, settings) =>
      step(state, change(input), own, settings);
  let kept: EngineInput['readings'] = {};
  const believesOldReadings = withInput((input) => {
    if (Object.keys(input.readings).length > 0) kept = input.readings;
    return { ...input, readings: kept };
  });
  /** The drain is never opened. */
  const holdsShut: Step = (state, input, own, settings) => {
    const stepped = step(state, input, own, settings);
    const outputs = { ...stepped.decision.outputs, drainOpen: false };
    return { ...stepped, decision: { ...stepped.decision, outputs } };
  };
  /** A pump that circulates is never stopped again. */
  const runsOn: Step = (state, input, own, settings) => {
    const stepped = step(state, input, own, settings);
    if (state.phase.name !== 'circulating' || stepped.state.phase.name === 'circulating') return stepped;
    const { phase, outputs } = state;
    return { state: { ...stepped.state, phase, outputs }, decision: { ...stepped.decision, outputs } };
  };
  const noLimit: Step = (state, input, own, settings) =>
    step(state, input, { ...own, store: { ...own.store, maximumC: 300 } }, { ...settings, storeLimitC: 300 });

  const rows: readonly (readonly [string, string, Life, Step])[] = [
    ['holds the drain shut', 'no-ice', frost, holdsShut],
    ['holds the drain shut', 'cold-water-leaves', frost, holdsShut],
    [
      'hears no feedback',
      'shut-before-pumping',
      broken('drain-stuck-open'),
      withInput((input) => ({ ...input, feedback: null })),
    ],
    ['stops no pump', 'wet-pump', broken('pump-unprimed'), runsOn],
    ['knows no limit', 'cool-store', { ...summer, storeC: 66 }, noLimit],
    ['believes old readings', 'silence-is-safe', broken('device-silent'), believesOldReadings],
  ];

  it.each(rows)('that %s breaks %s', (_wrong, name, life, own) => {
    expect(
      judge(
        life,
        [],
        own,
        truths.filter((truth) => truth.name === name),
      ),
    ).toContain(name);
    expect(judge(life, [], stepOn)).toBeUndefined();
  });

  it('stands against every promise about the plant', () => {
    expect(new Set(rows.map(([, name]) => name))).toEqual(new Set(truths.map(({ name }) => name)));
  });
});
