import { describe, expect, it } from 'vitest';
import type { LoopFit } from '../../../../../shared-types/tuning.ts';
import { usualSky } from '../../../../../sim/identify/possible-loop.ts';
import { possibleLoops } from '../../../../../sim/replay/live-again/possible-loops.ts';
import { loopsOf } from '../../../../../sim/replay/sweep/loops.ts';

const parameter = (name: string, value: number) => ({
  name,
  unit: '1',
  value,
  standardError: 0.1,
  heldBecause: null,
});
const fit: LoopFit = {
  schemaVersion: 1,
  site: 'x',
  days: ['2031-06-21'],
  converged: true,
  parameters: [parameter('stillLossWM2K', 10), parameter('windLossJM3K', 3)],
  sensorErrors: [],
  covariance: [
    [0.04, 0.03],
    [0.03, 0.09],
  ],
  residuals: [],
  verdicts: [],
};

describe('the loops of a sweep', () => {
  it('are the fitted one first, then those drawn from its covariance, and say so', () => {
    const { loops, remarks } = loopsOf({ ok: true, fit }, 3, 7);
    expect(loops).toEqual(possibleLoops(fit, 3, 7));
    expect(loops).toHaveLength(4);
    expect(loops[0]).toEqual({
      traits: { stillLossWM2K: 10, windLossJM3K: 3 },
      sensorErrors: {},
      sky: usualSky,
    });
    expect(remarks).toEqual(['The loop is that of the fit to 2031-06-21.']);
  });

  it('are usual ones without a fit, and say why', () => {
    const { loops, remarks } = loopsOf({ ok: false, why: 'its file is torn' }, 2, 7);
    expect(loops).toEqual(possibleLoops(null, 2, 7));
    expect(remarks).toEqual([
      expect.stringContaining('No fit of this loop is used, since its file is torn:'),
    ]);
  });
});
