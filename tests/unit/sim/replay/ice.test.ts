import { describe, expect, it } from 'vitest';
import { iceRemarks, sweepIceRemarks } from '../../../../sim/replay/ice.ts';

describe('ice in the pan', () => {
  it('is told of a day on either side, and not where there was none to speak of', () => {
    expect(iceRemarks(0.1, 0.1)).toEqual([]);
    expect(iceRemarks(0, 12.34)).toEqual([
      expect.stringContaining('up to 12.3 kg of ice under the tried settings, 0.0 kg under those of then.'),
    ]);
    expect(iceRemarks(0.2, 0)).toHaveLength(1);
  });

  it('is told of a sweep where a set freezes more than the settings in force do', () => {
    expect(sweepIceRemarks([5, 5, 5.1, 0])).toEqual([]);
    expect(sweepIceRemarks([5, 5.2, 40, 0])).toEqual([
      '2 sets freeze more of the pan than the settings in force do, up to 40.0 kg instead of 5.0 kg: none of them is advised.',
    ]);
  });
});
