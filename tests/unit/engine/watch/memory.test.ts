import { describe, expect, it } from 'vitest';
import { calmFlow, isFlow } from '../../../../controller/engine/watch/memory.ts';

const bound = { sinceMs: 1, sourceC: 20, sunWM2: 600, sourceBeforeC: 19, sunBeforeWM2: 500 };
const isSound = (remembered: unknown) => isFlow({ ...calmFlow, bound: remembered });

describe('the bound of a stretch of circulation', () => {
  it('is taken up whole, or where there is none', () => {
    expect([isSound(bound), isSound(null)]).toEqual([true, true]);
    expect([isSound(5), isSound(undefined), isSound({})]).toEqual([false, false, false]);
  });

  it.each(Object.keys(bound))('is not taken up without a number for %s', (name) => {
    expect(isSound({ ...bound, [name]: null })).toBe(false);
  });
});
