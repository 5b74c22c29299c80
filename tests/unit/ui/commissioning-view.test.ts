import { describe, expect, test } from 'vitest';
import {
  askOf,
  countResults,
  isUnderWay,
  stepsOf,
} from '../../../desktop/ui/site/commissioning/commissioning-view.ts';
import { type CommissioningStep, commissioningSteps } from '../../../shared-types/commissioning.ts';
import type { Decision } from '../../../shared-types/engine.ts';
import type { TrustedReading } from '../../../shared-types/readings.ts';
import { testSiteMessage } from '../../support/fake-monitor/site.ts';
import { testDecision } from '../../support/fake-monitor/snapshot.ts';

const { site } = testSiteMessage();
const run = (step: CommissioningStep) => ({ step, text: '', findings: [] });
const decision = (
  step: CommissioningStep,
  pumpFraction: number,
  change: Partial<Decision> = {},
): Decision => ({
  ...testDecision,
  commissioning: run(step),
  outputs: { ...testDecision.outputs, pumpFraction },
  ...change,
});

test('a run is under way until it is done or broken off', () => {
  expect(commissioningSteps.filter((step) => !isUnderWay(run(step)))).toEqual(['done', 'ended']);
});

test('a pan that cannot be emptied is neither emptied nor drained', () => {
  expect(stepsOf(site)).toEqual(['emptying', 'filling', 'flowing', 'draining']);
  expect(stepsOf({ ...site, drain: 'none' })).toEqual(['filling', 'flowing']);
});

describe('what a person is asked', () => {
  test('is whether the pan is full while the pump fills, and empty while it drains', () => {
    expect(askOf(decision('filling', 1), site)).toBe('full');
    expect(askOf(decision('draining', 0), site)).toBe('empty');
  });
  test('is nothing before the pump runs, before it stands, and in the other steps', () => {
    expect(askOf(decision('filling', 0), site)).toBeNull();
    expect(askOf(decision('draining', 1), site)).toBeNull();
    expect(askOf(decision('emptying', 0), site)).toBeNull();
    expect(askOf(decision('flowing', 1), site)).toBeNull();
    expect(askOf(decision('filling', 1, { commissioning: null }), site)).toBeNull();
  });
  test('is nothing where a sensor tells it, and nothing of a pan that stays full', () => {
    const readings = (panLevelMm: TrustedReading) => ({
      belief: { ...testDecision.belief, readings: { panLevelMm } },
    });
    const good = readings({ quality: 'good', value: 3, ageMs: 0 });
    expect(askOf(decision('filling', 1, good), site)).toBeNull();
    const failed = readings({ quality: 'failed', cause: 'stale' });
    expect(askOf(decision('filling', 1, failed), site)).toBe('full');
    expect(askOf(decision('filling', 1), { ...site, drain: 'none' })).toBeNull();
  });
});

test('the results of a logged run are counted', () => {
  const values = { 'fill-time': 'passed', 'drain-time': 'by-hand', 'pump-direction': 'failed', x: 'passed' };
  expect(countResults({ atMs: 0, kind: 'commissioning-done', text: '', values })).toEqual({
    passed: 2,
    failed: 1,
    byHand: 1,
  });
});
