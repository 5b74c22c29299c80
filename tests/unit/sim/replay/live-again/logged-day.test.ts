import { expect, it } from 'vitest';
import type { DaySummary } from '../../../../../shared-types/log.ts';
import { loggedOf } from '../../../../../sim/replay/live-again/logged-day.ts';

const summary: DaySummary = {
  day: '2031-06-20',
  steps: 8640,
  firstMs: 0,
  lastMs: 86_400_000,
  heatHomeJ: 5e7,
  heatLostJ: 2e7,
  electricityJ: 1e6,
  pumpRunS: 3600,
  starts: 3,
  fills: 1,
  alarms: 0,
  coveredFraction: 1,
};
const logged = (own: Partial<DaySummary>) => loggedOf({ days: () => [{ ...summary, ...own }] }, '2031-06-20');

it('counts what came home less what was taken', () => {
  const rest = { electricityJ: 1e6, pumpRunS: 3600, starts: 3, fills: 1 };
  expect(logged({})).toEqual({ heatHomeJ: 3e7, ...rest });
  expect(logged({ heatLostJ: null }).heatHomeJ).toBe(5e7);
  expect(logged({ heatHomeJ: null }).heatHomeJ).toBeNull();
});

it('does not make up a day that is not kept', () => {
  expect(() => loggedOf({ days: () => [summary] }, '2031-06-21')).toThrow('nothing of 2031-06-21 is kept');
});
