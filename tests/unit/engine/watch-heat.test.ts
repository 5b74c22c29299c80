import { describe, expect, it } from 'vitest';
import {
  excessK,
  isTooHotForFlow,
  turnoverMs,
  updateBound,
} from '../../../controller/engine/watch/flow-bound.ts';
import { hasNoFlow, updateHeatFlow } from '../../../controller/engine/watch/heat-flow.ts';
import { calmFlow, type FlowMemory } from '../../../controller/engine/watch/memory.ts';
import { makeSite } from './rig.ts';
import { hotLoop, level, type Scene, scarce, situationOf } from './watch-rig.ts';

const base = { storeBottomC: 20, ambientC: 15 } as const;
const still = { sinceMs: 0, sourceC: 20, sunWM2: 600, sourceBeforeC: 20, sunBeforeWM2: 500 };

describe('what the pan may stand above its source while water moves', () => {
  // 10.2 m2 at 600 W/m2 over 0.6 of 20 L/min at 69.604 W/K each: 7.327 K, and 2 K for the sensors.
  const outletK = (10.2 * 600) / (0.6 * 20 * ((998.2 * 4184) / 60_000)) + 2;
  const sheetK = (outletK - 2) / 2 + 600 / 120 + 2;
  const tooHot = (values: object, bound = still, more: Scene = {}) =>
    isTooHotForFlow(bound, situationOf({ values: { ...base, ...values }, ...more }));

  it('is heat over flow at the outlet, half of it and the contact at the sheet', () => {
    expect(outletK).toBeCloseTo(9.327, 3);
    expect(tooHot({ panOutletC: 20 + outletK - 0.001 })).toBe(false);
    expect(tooHot({ panOutletC: 20 + outletK + 0.001 })).toBe(true);
    expect(tooHot({ panSheetC: 20 + sheetK - 0.001 })).toBe(false);
    expect(tooHot({ panSheetC: 20 + sheetK + 0.001 })).toBe(true);
  });

  it('is to be too much for both thermometers, and says nothing without any', () => {
    expect(tooHot({ panOutletC: 40, panSheetC: 40 })).toBe(true);
    expect(tooHot({ panOutletC: 40, panSheetC: 25 })).toBe(false);
    expect(tooHot({ panOutletC: 25, panSheetC: 40 })).toBe(false);
    expect(tooHot({})).toBe(false);
  });

  it('counts from the warmest source, and under the strongest sun, of two stretches', () => {
    const hot = { panOutletC: 20 + outletK + 0.1 };
    expect(tooHot(hot, { ...still, sourceC: 20.2 })).toBe(false);
    expect(tooHot(hot, { ...still, sourceBeforeC: 20.2 })).toBe(false);
    expect(tooHot(hot, { ...still, sunBeforeWM2: 620 })).toBe(false);
    expect(tooHot(hot, { ...still, sunBeforeWM2: 590 })).toBe(true);
  });

  it('grows with warm air, by 35 W/m2 for each kelvin above the source, and with 35 °C where nothing tells', () => {
    const warmK = (10.2 * 35) / (0.6 * 20 * ((998.2 * 4184) / 60_000));
    expect(tooHot({ ambientC: 21, panOutletC: 20 + outletK + warmK - 0.001 })).toBe(false);
    expect(tooHot({ ambientC: 21, panOutletC: 20 + outletK + warmK + 0.001 })).toBe(true);
    const unknown = (panOutletC: number) =>
      isTooHotForFlow(still, situationOf({ values: { storeBottomC: 20, panOutletC } }));
    expect(unknown(20 + outletK + 15 * warmK - 0.001)).toBe(false);
    expect(unknown(20 + outletK + 15 * warmK + 0.001)).toBe(true);
  });

  it('is smaller where more flow was learnt, larger at less speed', () => {
    const hot = { panOutletC: 20 + outletK - 0.1 };
    expect(tooHot(hot, still, { state: { learnt: { fullFlowLMin: 25 } } })).toBe(true);
    const slow = {
      outputs: { pumpFraction: 0.5, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false },
    };
    expect(tooHot({ panOutletC: 20 + outletK + 5 }, still, { state: slow })).toBe(false);
    expect(turnoverMs(situationOf({ state: slow }))).toBe(2_400_000);
    expect(turnoverMs(situationOf())).toBe(1_200_000);
  });

  it('is told in the reason from the outlet, else the sheet', () => {
    expect(excessK(situationOf({ values: { ...base, panOutletC: 30, panSheetC: 33 } }))).toBe(10);
    expect(excessK(situationOf({ values: { ...base, panSheetC: 33 } }))).toBe(13);
    expect(excessK(situationOf({ values: base }))).toBeNull();
    expect(excessK(situationOf({ values: { panOutletC: 30 } }))).toBeNull();
  });
});

describe('the sun and the source that are reckoned with', () => {
  const at = (scene: Scene, before: typeof still | null = null) =>
    updateBound(before, situationOf({ ...scene, values: { ...base, ...scene.values } }));

  it.each([
    [{ values: { irradianceWM2: 512 } }, 512],
    [{ values: { irradianceWM2: -3 } }, 0],
    [{ sunHeightDeg: null }, 1200],
    // Haurwitz: 1098 sin 60° exp(-0.059 / sin 60°) = 888; 1.25 times that and 100.
    [{ sunHeightDeg: 60 }, 1200],
    // At 30°: 488; at 0°: nothing.
    [{ sunHeightDeg: 30 }, 710],
    [{ sunHeightDeg: 0 }, 100],
  ])('are, for %o, %d W/m2', (scene, sunWM2) => {
    expect(at(scene)).toEqual({
      sinceMs: 3_600_000,
      sourceC: 20,
      sunWM2,
      sourceBeforeC: 20,
      sunBeforeWM2: sunWM2,
    });
  });

  it('are the most of a stretch, which lasts as long as slow water takes', () => {
    const since = (sinceMs: number) => ({ ...still, sinceMs });
    const values = { irradianceWM2: 700 };
    expect(at({ values }, since(1_600_001))).toEqual({ ...since(1_600_001), sunWM2: 700 });
    expect(at({ values: { irradianceWM2: 600, storeBottomC: 21 } }, since(3_000_000))).toEqual({
      ...since(3_000_000),
      sourceC: 21,
    });
    const same = since(3_000_000);
    expect(at({ values: { irradianceWM2: 600 } }, same)).toBe(same);
    expect(at({ values: { irradianceWM2: 300 } }, since(1_600_000))).toEqual({
      sinceMs: 3_600_000,
      sourceC: 20,
      sunWM2: 300,
      sourceBeforeC: 20,
      sunBeforeWM2: 600,
    });
  });

  it('come from the reservoir where the loop has one', () => {
    const site = makeSite('pump-stop', ['panOutletC', 'storeBottomC', 'reservoirC'], {
      plumbing: 'reservoir',
    });
    expect(updateBound(null, situationOf({ site, values: { ...base, reservoirC: 31 } }))?.sourceC).toBe(31);
    expect(updateBound(still, situationOf({ site, values: base }))).toBeNull();
  });
});

describe('a pan that is too hot for moving water', () => {
  const phase = (afterFill: boolean, forMs: number) => ({
    phase: { name: 'circulating', sinceMs: 3_600_000 - forMs, afterFill },
  });
  const hot = { ...base, irradianceWM2: 600, panOutletC: 40 };
  const seen = (state: object, before: Partial<FlowMemory> = {}, values: object = hot, site = level) =>
    updateHeatFlow({ ...calmFlow, ...before }, situationOf({ site, state, values: values as never }));

  it('counts once the water of a rest has passed twice, or half of a fresh fill', () => {
    expect(seen(phase(false, 2_399_999)).hotMs).toBeNull();
    expect(seen(phase(false, 2_400_000))).toMatchObject({ hotMs: 3_600_000, hotC: 40 });
    expect(seen(phase(true, 599_999)).hotMs).toBeNull();
    expect(seen(phase(true, 600_000)).hotMs).toBe(3_600_000);
  });

  it('counts from anew when it has fallen', () => {
    const before = { hotMs: 5, hotC: 40.3 };
    expect(seen(phase(true, 3_600_000), before)).toMatchObject(before);
    expect(seen(phase(true, 3_600_000), { hotMs: 5, hotC: 40.31 })).toMatchObject({
      hotMs: 3_600_000,
      hotC: 40,
    });
    expect(seen(phase(true, 3_600_000), before, { ...hot, panOutletC: 25 })).toMatchObject({
      hotMs: null,
      hotC: null,
    });
  });

  it('is not asked where the flow is seen, nor in another phase', () => {
    const calm = { bound: null, hotMs: null, hotC: null, stillInletC: null, stillMs: null };
    expect(seen(phase(true, 3_600_000), {}, { ...hot, flowLMin: 2 })).toEqual(calm);
    expect(seen(phase(true, 3_600_000), {}, { ...hot, flowLMin: 1.9 }).hotMs).toBe(3_600_000);
    expect(seen({ phase: { name: 'filling', sinceMs: 0 } })).toEqual(calm);
    expect(seen(phase(true, 3_600_000), {}, { irradianceWM2: 600, panOutletC: 60 }).hotMs).toBeNull();
  });

  it('proves after three minutes that no water moves', () => {
    const told = (flow: Partial<FlowMemory>, state: object = {}) =>
      hasNoFlow({ ...calmFlow, ...flow }, situationOf({ state }));
    expect([told({ hotMs: 3_420_000 }), told({ hotMs: 3_420_001 })]).toEqual([true, false]);
    expect([told({ stillMs: 3_300_000 }), told({ stillMs: 3_300_001 })]).toEqual([true, false]);
    expect(told({ hotMs: 0 }, { phase: { name: 'filling', sinceMs: 0 } })).toBe(false);
  });
});

describe('an inlet that gets no water', () => {
  const seen = (values: object, before: Partial<FlowMemory> = {}) =>
    updateHeatFlow({ ...calmFlow, ...before }, situationOf({ values: { ...base, ...values } }));

  it('stays away from its source, and where it was', () => {
    expect(seen({ panInletC: 22.9 })).toMatchObject({ stillInletC: null, stillMs: null });
    expect(seen({ panInletC: 23 })).toMatchObject({ stillInletC: 23, stillMs: 3_600_000 });
    expect(seen({ panInletC: 17 })).toMatchObject({ stillInletC: 17, stillMs: 3_600_000 });
    const before = { stillInletC: 25, stillMs: 9 };
    expect(seen({ panInletC: 25.9 }, before)).toMatchObject(before);
    expect(seen({ panInletC: 24.1 }, before)).toMatchObject(before);
    expect(seen({ panInletC: 26 }, before)).toMatchObject({ stillInletC: 26, stillMs: 3_600_000 });
    expect(seen({ panInletC: 20 }, before)).toMatchObject({ stillInletC: null });
    expect(seen({}, before)).toMatchObject({ stillInletC: null });
  });
});

describe('a loop without a flow meter whose water does not move', () => {
  it('is stopped with an alarm, and locked the second time', () => {
    const loop = hotLoop(40);
    const stop = loop.decisions.find(({ reasons }) => reasons.phase.code === 'no-flow');
    expect(stop?.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    expect(stop?.reasons.phase.text).toBe(
      'No water moves: the pan stands 40.0 K above the water that the pump draws, and the pump was stopped.',
    );
    expect(loop.alarm('no-flow')).toMatchObject({ active: true, priority: 'soon' });
    expect(loop.alarm('no-flow')?.text).toContain('air, a closed valve or a dead pump');
    expect(loop.state.failure).toEqual({ count: 1, cause: 'no-flow' });
    loop.until('stopped', 7200);
    expect(loop.state.failure.count).toBe(2);
  });

  it('is let run where moving water explains all that is seen', () => {
    const loop = hotLoop(8);
    expect(loop.phase).toBe('circulating');
    expect(loop.state.failure.count).toBe(0);
    expect(loop.site).toBe(scarce);
  });

  it('is forgiven in a pan that cannot be emptied after two hours of flow', () => {
    const site = makeSite('corner', ['panOutletC', 'storeBottomC', 'ambientC']);
    const loop = hotLoop(60, site);
    expect(loop.state.failure).toEqual({ count: 1, cause: 'no-flow' });
    loop.set({ panOutletC: 27 }).until('circulating', 3600);
    const leftS = 7200 - loop.last.phaseForMs / 1000;
    loop.run(leftS - 10, 10);
    expect(loop.state.failure.count).toBe(1);
    loop.run(20, 10);
    expect(loop.state.failure.count).toBe(0);
  });
});
