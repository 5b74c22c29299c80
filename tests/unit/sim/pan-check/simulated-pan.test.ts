import { describe, expect, it } from 'vitest';
import { ailments, checkedPan } from '../../../support/pan-cases.ts';

describe('the pan of a simulated loop', () => {
  it('that loses a tenth of its light on the way is found to gather less, and by dirt', () => {
    const check = checkedPan({
      ...{ site: 'quillhaven-wash-house', seed: 5, days: 16, ailingDays: 7 },
      ailment: ailments['a tenth of the light'],
    });
    const { findings = [], blocks = [] } = check ?? {};
    expect(findings.map(({ code }) => code)).toEqual(['gathers-less']);
    expect(findings[0]?.text).toContain('look for dirt');
    // A tenth of the light is more of what is left after the loss.
    const { value, low } = blocks.at(-1)?.ratio ?? { value: 1, low: 1 };
    expect(value).toBeLessThan(0.88);
    expect(low).toBeGreaterThan(0.6);
  });
});
