import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../../../shared-types/log.ts';
import { differingFields, speakingReason } from '../../../../sim/replay/difference.ts';

const outcome: Outcome = {
  phase: 'circulating',
  outputs: { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false },
  reasons: { phase: 'circulating-for-heat', pump: 'circulating-for-heat', drain: 'drain-closed-to-hold' },
  alarms: ['store-hot'],
  failed: ['panSheetC'],
  total: { heatHomeJ: 1e9 + 1, heatLostJ: 0, electricityJ: 5, pumpRunS: 7, starts: 2, fills: 1 },
};

describe('difference of two outcomes', () => {
  it('is none between equal ones', () => {
    expect(differingFields(outcome, JSON.parse(JSON.stringify(outcome)))).toEqual([]);
  });

  const rows: [string, Partial<Outcome>, string[], keyof Outcome['reasons']][] = [
    ['phase', { phase: 'resting' }, ['phase'], 'phase'],
    ['an output', { outputs: { ...outcome.outputs, pumpFraction: 0 } }, ['outputs.pumpFraction'], 'pump'],
    ['the drain', { outputs: { ...outcome.outputs, drainOpen: true } }, ['outputs.drainOpen'], 'drain'],
    ['a reason', { reasons: { ...outcome.reasons, drain: 'output-not-fitted' } }, ['reasons.drain'], 'drain'],
    [
      'the last bit of a total',
      { total: { ...outcome.total, heatHomeJ: 1e9 + 1 + 2 ** -23 } },
      ['total.heatHomeJ'],
      'phase',
    ],
    ['a sign of nought', { total: { ...outcome.total, heatLostJ: -0 } }, ['total.heatLostJ'], 'phase'],
    ['alarms', { alarms: [] }, ['alarms'], 'phase'],
    ['failed sensors', { failed: ['panOutletC'] }, ['failed'], 'phase'],
  ];
  it.each(rows)('%s', (_, change, fields, reason) => {
    const found = differingFields(outcome, { ...outcome, ...change });
    expect(found).toEqual(fields);
    expect(speakingReason(found)).toBe(reason);
  });
});
