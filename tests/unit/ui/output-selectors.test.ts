import { describe, expect, test } from 'vitest';
import { emptyLive, type LiveState } from '../../../desktop/ui/store/live-store.ts';
import {
  selectDrainDiffers,
  selectDraining,
  selectDrainOpen,
  selectExchanging,
  selectFlowing,
  selectFlowUnproven,
  selectPumpDiffers,
  selectPumpFraction,
} from '../../../desktop/ui/store/output-selectors.ts';
import type { Decision, Feedback } from '../../../shared-types/engine.ts';
import { testSite, testSiteMessage } from '../../support/fake-monitor/site.ts';
import { testDecision, testLive, testSnapshot } from '../../support/fake-monitor/snapshot.ts';

const running = testDecision.outputs;
const resting = { ...running, pumpFraction: 0 };
const noFlow = { quality: 'good', value: 0, ageMs: 0 } as const;

function state(
  feedback: Partial<Feedback> | null,
  decision: Partial<Decision> = {},
  more: { readonly ageMs?: number; readonly drain?: 'drain-valve' | 'drain-pump' } = {},
): LiveState {
  const message = testSiteMessage();
  const live = testLive({
    site: { ...message, site: { ...message.site, drain: more.drain ?? 'drain-valve' } },
    snapshot: {
      ...testSnapshot(decision),
      device: {
        readings: {},
        feedback: feedback === null ? null : { pumpFraction: 1, drainOpen: false, ageMs: 500, ...feedback },
        renewedAgeMs: 0,
      },
    },
    snapshotAgeMs: more.ageMs ?? 0,
  });
  return { ...emptyLive, sites: { [testSite]: { live, heardAtMs: 0 } } };
}

describe('what the drawing takes pump and drain to do', () => {
  test('is what the device says, where it says something', () => {
    expect(selectPumpFraction(state({ pumpFraction: 0.4 }))).toBe(0.4);
    expect(selectDrainOpen(state({ drainOpen: true }))).toBe(true);
  });
  test('is what it was told, where it says nothing', () => {
    expect(selectPumpFraction(state(null))).toBe(1);
    expect(selectDrainOpen(state(null))).toBe(false);
    expect(selectDrainOpen(state({ drainOpen: null }))).toBe(false);
    expect(selectPumpFraction(emptyLive)).toBe(0);
    expect(selectDrainOpen(emptyLive)).toBe(true);
  });
  test('is what it was told once the device’s word is old', () => {
    expect(selectPumpFraction(state({ pumpFraction: 0, ageMs: 20_000 }))).toBe(0);
    expect(selectPumpFraction(state({ pumpFraction: 0, ageMs: 20_001 }))).toBe(1);
  });
  test('takes no word for a drain valve where the site has none', () => {
    expect(selectDrainOpen(state({ drainOpen: true }, {}, { drain: 'drain-pump' }))).toBe(false);
  });
});

describe('a difference between told and said', () => {
  test('is one of running and resting, whatever the speed', () => {
    expect(selectPumpDiffers(state({ pumpFraction: 0.3 }))).toBe(false);
    expect(selectPumpDiffers(state({ pumpFraction: 0 }))).toBe(true);
    expect(selectPumpDiffers(state({ pumpFraction: 0.3 }, { outputs: resting }))).toBe(true);
    expect(selectPumpDiffers(state(null))).toBe(false);
  });
  test('is one of open and closed', () => {
    expect(selectDrainDiffers(state({ drainOpen: true }))).toBe(true);
    expect(selectDrainDiffers(state({ drainOpen: false }))).toBe(false);
    expect(selectDrainDiffers(state({ drainOpen: null }))).toBe(false);
  });
});

describe('what flows', () => {
  const unproven = { ...testDecision.belief, flowProven: false };
  test('is shown while the pump runs and flow is proven', () => {
    expect(selectFlowing(state({}))).toBe(true);
    expect(selectFlowing(state({ pumpFraction: 0 }))).toBe(false);
    expect(selectFlowing(state({}, { belief: unproven }))).toBe(false);
    expect(selectFlowUnproven(state({}, { belief: unproven }))).toBe(true);
    expect(selectFlowUnproven(state({}))).toBe(false);
  });
  test('is told by the flow sensor alone of a pump that runs against its order', () => {
    expect(selectFlowing(state({}, { outputs: resting, belief: unproven }))).toBe(true);
    const still = { ...unproven, readings: { ...unproven.readings, flowLMin: noFlow } };
    expect(selectFlowing(state({}, { outputs: resting, belief: still }))).toBe(false);
    const doubtful = { quality: 'doubtful', value: 9, ageMs: 0, cause: 'stuck' } as const;
    const odd = { ...unproven, readings: { ...unproven.readings, flowLMin: doubtful } };
    expect(selectFlowing(state({}, { outputs: resting, belief: odd }))).toBe(false);
  });
  test('is not shown of a loop that nobody has heard for a while', () => {
    const old = { ageMs: 60_000 };
    expect(selectFlowing(state({}, {}, old))).toBe(false);
    const emptying = { phase: 'emptying', outputs: { ...resting, drainOpen: true } } as const;
    expect(selectDraining(state(null, emptying))).toBe(true);
    expect(selectDraining(state(null, emptying, old))).toBe(false);
    expect(selectDraining(state({ drainOpen: false }, emptying))).toBe(false);
    const exchanging = { outputs: { ...resting, exchangerPumpOn: true } };
    expect(selectExchanging(state(null, exchanging))).toBe(true);
    expect(selectExchanging(state(null, exchanging, old))).toBe(false);
    expect(selectExchanging(state(null))).toBe(false);
  });
});
