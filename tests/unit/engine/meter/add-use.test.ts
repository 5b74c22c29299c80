import { describe, expect, it } from 'vitest';
import type { HeatReading } from '../../../../controller/engine/meter/heat-rate.ts';
import { addUse, beginDay, since } from '../../../../controller/engine/meter/totals.ts';
import { type EngineState, initialState, safeOutputs } from '../../../../controller/engine/state.ts';
import type { Channel } from '../../../../shared-types/channels.ts';
import { quickSettings } from '../rig.ts';
import { situationOf } from '../situations.ts';

const total = { heatHomeJ: 100, heatLostJ: 200, electricityJ: 300, pumpRunS: 400, starts: 5, fills: 6 };
const meter: EngineState['meter'] = {
  ...{ total, dayStart: initialState().meter.total, estimatedJ: 50, filledL: 7 },
  ...{ night: { sumKMs: 1, forMs: 2 }, rateW: 40 },
};
const heat = (rateW: number | null, estimated = false): HeatReading => ({
  ...{ rateW, flowLMin: 20, estimated, errorFraction: null },
});

interface Given {
  readonly before?: EngineState['meter'];
  readonly elapsedMs?: number;
  readonly pumpFraction?: number;
  readonly told?: Partial<Record<Channel, number>>;
  readonly name?: 'filling' | 'circulating';
}

function use(reading: HeatReading, given: Given = {}) {
  const { before = meter, elapsedMs = 2000, pumpFraction = 1, told = {}, name = 'circulating' } = given;
  const phase = { name, sinceMs: 0, afterFill: false } as const;
  const state = { phase, outputs: { ...safeOutputs, pumpFraction } };
  return addUse(before, reading, situationOf({ state, elapsedMs, told }));
}

describe('what the time since the last step adds', () => {
  it('is the trapezoid of heat, the power of the pump, and its time', () => {
    expect(use(heat(60))).toEqual({
      ...meter,
      total: { ...total, heatHomeJ: 200, electricityJ: 400, pumpRunS: 402 },
      rateW: 60,
    });
  });

  it('is lost where heat leaves the store', () => {
    expect(use(heat(-100)).total).toMatchObject({ heatHomeJ: 100, heatLostJ: 260 });
    expect(use(heat(-40)).total).toMatchObject({ heatHomeJ: 100, heatLostJ: 200 });
  });

  it('is an estimate as far as the reading is one, and as far as it came home', () => {
    expect(use(heat(60)).estimatedJ).toBe(50);
    expect(use(heat(60, true)).estimatedJ).toBe(150);
    expect(use(heat(-100, true)).estimatedJ).toBe(50);
  });

  it('is no heat where either rate is not known', () => {
    expect(use(heat(null))).toMatchObject({ total: { heatHomeJ: 100, pumpRunS: 402 }, rateW: null });
    const unknown = { ...meter, rateW: null };
    expect(use(heat(60), { before: unknown })).toMatchObject({ total: { heatHomeJ: 100 }, rateW: 60 });
  });

  it('is nothing across a gap beyond its limit', () => {
    const limitMs = quickSettings.gapLimitS * 1000;
    expect(use(heat(60), { elapsedMs: limitMs }).total.pumpRunS).toBe(400 + quickSettings.gapLimitS);
    expect(use(heat(60), { elapsedMs: limitMs + 1 })).toEqual({ ...meter, rateW: 60 });
  });

  it('is nothing while the pump stands and no heat flows', () => {
    const still = { ...meter, rateW: 0 };
    expect(use(heat(0), { before: still, pumpFraction: 0 })).toBe(still);
    const unknown = { ...meter, rateW: null };
    expect(use(heat(0), { before: unknown, pumpFraction: 0 })).toEqual({ ...meter, rateW: 0 });
    expect(use(heat(0), { before: still, pumpFraction: 1 }).total.pumpRunS).toBe(402);
  });

  it('is the last heat of a pump that has just stopped, without electricity', () => {
    const { total: after } = use(heat(0), { pumpFraction: 0, told: { pumpPowerW: 30 } });
    expect(after).toEqual({ ...total, heatHomeJ: 140 });
  });

  it('is the power that is measured, never less than nought, else the cube of the speed', () => {
    const spentJ = (given: Given) => use(heat(60), given).total.electricityJ - 300;
    expect(spentJ({ told: { pumpPowerW: 30 } })).toBe(60);
    expect(spentJ({ told: { pumpPowerW: -30 } })).toBe(0);
    expect(spentJ({ pumpFraction: 0.5 })).toBe(12.5);
  });

  it('is water that fills, while the pan fills', () => {
    const told = { flowLMin: 30 };
    expect(use(heat(60), { name: 'filling', told }).filledL).toBe(8);
    expect(use(heat(60), { name: 'circulating', told }).filledL).toBe(7);
  });
});

describe('the totals of a day', () => {
  it('begin with the day, each of them', () => {
    expect(beginDay(meter)).toEqual({ ...meter, dayStart: total });
    const start = { heatHomeJ: 1, heatLostJ: 3, electricityJ: 5, pumpRunS: 7, starts: 2, fills: 1 };
    expect(since(total, start)).toEqual({
      ...{ heatHomeJ: 99, heatLostJ: 197, electricityJ: 295, pumpRunS: 393, starts: 3, fills: 5 },
    });
  });
});
