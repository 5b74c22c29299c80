import { describe, expect, it } from 'vitest';
import { safeOutputs } from '../../../../controller/engine/state.ts';
import { isTooHotForFlow } from '../../../../controller/engine/watch/flow-bound.ts';
import { updateHeatFlow } from '../../../../controller/engine/watch/heat-flow.ts';
import { calmFlow, type FlowMemory } from '../../../../controller/engine/watch/memory.ts';
import { type Scene, situationOf } from '../watch-rig.ts';

/** 0.6 of 20 L/min, with what each of them carries [W/K]. */
const carriedWK = 0.6 * ((998.2 * 4184) / 60_000) * 20;
const sun = { sinceMs: 0, sunWM2: 600, sunBeforeWM2: 600 };

describe('a pan over water that moves', () => {
  const tooHot = (sourceC: number, sourceBeforeC: number, values: Scene['values']) =>
    isTooHotForFlow({ ...sun, sourceC, sourceBeforeC }, situationOf({ values: values ?? {} }));

  it('may stand at the very bound', () => {
    const riseK = (600 * 10.2) / carriedWK;
    const outletC = 2 + riseK;
    const sheetC = 2 + (riseK / 2 + 600 / 120);
    const over = (panC: number) => panC + 1e-9;
    const air = { ambientC: 0 };
    expect([
      tooHot(0, 0, { ...air, panOutletC: outletC }),
      tooHot(0, 0, { ...air, panSheetC: sheetC }),
    ]).toEqual([...[false, false]]);
    expect(tooHot(0, 0, { ...air, panOutletC: over(outletC) })).toBe(true);
    expect(tooHot(0, 0, { ...air, panSheetC: over(sheetC) })).toBe(true);
  });

  it('is warmed by air that is warmer than the warmest source', () => {
    const outletK = 2 + ((600 + 35 * 5) * 10.2) / carriedWK;
    const at = (panOutletC: number) => ({ ambientC: 30, panOutletC });
    for (const [now, before] of [
      [20, 25],
      [25, 20],
    ] as const) {
      expect(tooHot(now, before, at(25 + outletK - 0.001))).toBe(false);
      expect(tooHot(now, before, at(25 + outletK + 0.001))).toBe(true);
    }
  });
});

describe('what temperatures say of the flow', () => {
  const seen = (values: Scene['values'], before: Partial<FlowMemory> = {}, state: object = {}) =>
    updateHeatFlow({ ...calmFlow, ...before }, situationOf({ values: values ?? {}, state }));

  it('is asked of a pump without a flow meter before its output is on', () => {
    expect(seen({ storeBottomC: 20 }, {}, { outputs: safeOutputs }).bound).not.toBeNull();
  });

  it('is nothing of an inlet or a source that cannot be read', () => {
    const before = { stillInletC: 30, stillMs: 5 };
    const none = { stillInletC: null, stillMs: null };
    expect(seen({ storeBottomC: 20, panInletC: 30 }, before)).toMatchObject(before);
    expect(seen({ storeBottomC: 20 }, before)).toMatchObject(none);
    expect(seen({ panInletC: 30 }, before)).toMatchObject(none);
  });

  it('begins with the inlet as it is', () => {
    const begun = { stillInletC: 0.5, stillMs: 3_600_000 };
    expect(seen({ storeBottomC: 20, panInletC: 0.5 })).toMatchObject(begun);
  });
});
