import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outcomeOf } from '../../../controller/engine/index.ts';
import type { Decision } from '../../../shared-types/engine.ts';
import { differingFields } from '../../../sim/replay/difference.ts';
import { sameOutcome } from '../../../sim/replay/same-outcome.ts';

const total = fc.constantFrom(0, -0, 1, 2);
const reason = fc.record({
  code: fc.constantFrom('resting-no-gain', 'circulating-for-heat'),
  text: fc.constant(''),
});
/** What an outcome is made of, from so few values that two of them are often the same. */
const decision = fc.record({
  phase: fc.constantFrom('resting', 'circulating'),
  outputs: fc.record({
    pumpFraction: fc.constantFrom(0, -0, 1),
    drainOpen: fc.boolean(),
    drainPumpOn: fc.boolean(),
    exchangerPumpOn: fc.boolean(),
  }),
  reasons: fc.record({ phase: reason, pump: reason, drain: reason }),
  alarms: fc.array(fc.record({ code: fc.constantFrom('store-hot', 'pan-cold'), active: fc.boolean() }), {
    maxLength: 3,
  }),
  meter: fc.record({
    total: fc.record({
      heatHomeJ: total,
      heatLostJ: total,
      electricityJ: total,
      pumpRunS: total,
      starts: total,
      fills: total,
    }),
  }),
  belief: fc.record({
    readings: fc.dictionary(
      fc.constantFrom('panOutletC', 'storeBottomC', 'flowLMin'),
      fc.record({ quality: fc.constantFrom('good', 'failed') }),
    ),
  }),
});
type Parts = typeof decision extends fc.Arbitrary<infer T> ? T : never;
const asDecision = (parts: Parts) => parts as unknown as Decision;

/** Another decision: one of its parts drawn anew, or none. */
const pair = fc
  .record({
    a: decision,
    b: decision,
    part: fc.constantFrom('phase', 'outputs', 'reasons', 'alarms', 'meter', 'belief', ''),
  })
  .map(
    ({ a, b, part }) =>
      [a, part === '' ? structuredClone(a) : { ...a, [part]: b[part as keyof Parts] }] as const,
  );

describe('the quick comparison of a replay', () => {
  it('finds two decisions the same exactly when no field of them differs', () => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const logged = outcomeOf(asDecision(a));
        const fields = differingFields(logged, outcomeOf(asDecision(b)));
        expect(sameOutcome(logged, asDecision(b))).toBe(fields.length === 0);
      }),
      { numRuns: 500 },
    );
  });
});
