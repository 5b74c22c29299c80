import { describe, expect, it } from 'vitest';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import type { RawReading } from '../../../../shared-types/readings.ts';
import { emptyLoop, type Loop, makeSite } from '../rig.ts';

const site = makeSite('drain-valve');
const broken: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };
const offset = (loop: Loop) => loop.state.learnt['endsOffsetK'];

/** A pan that stands empty from 23:00 UTC on; the sun is 20 deg and more below the horizon until 4:00. */
function night(outletC: number, inletC = 10): Loop {
  const loop = emptyLoop(site);
  loop.nowMs = Date.UTC(2031, 11, 21, 22);
  loop.step(null).until('empty');
  return loop.set({ panOutletC: outletC, panSheetC: outletC, panInletC: inletC });
}

describe('the two ends of a dry pan in the dark', () => {
  it('are compared for two hours once it stood empty for two', () => {
    const loop = night(10.6).run(4 * 3600 - 60, 10);
    expect(offset(loop)).toBeUndefined();
    expect(offset(loop.run(120, 10))).toBeCloseTo(0.6, 10);
  });

  it('teach once a night, and the nights together', () => {
    const loop = night(10.6).run(4.1 * 3600, 10);
    expect(offset(loop.set({ panOutletC: 11.6 }).run(3 * 3600, 10))).toBeCloseTo(0.6, 10);
    loop.state = { ...loop.state, meter: { ...loop.state.meter, night: null } };
    expect(offset(loop.set({ panOutletC: 11 }).run(2.1 * 3600, 10))).toBeCloseTo(0.6 + 0.25 * 0.4, 2);
  });

  it('teach nothing when they are far apart', () => {
    expect(offset(night(11.9).run(4.1 * 3600, 10))).toBeCloseTo(1.9, 10);
    expect(offset(night(12.1).run(4.1 * 3600, 10))).toBeUndefined();
    expect(offset(night(7.9).run(4.1 * 3600, 10))).toBeUndefined();
  });

  it('wait while one of them cannot be read', () => {
    const loop = night(10.6)
      .set({ panInletC: broken })
      .run(3 * 3600, 10)
      .set({ panInletC: 10 });
    expect(offset(loop.run(1.5 * 3600, 10))).toBeUndefined();
    expect(offset(loop.run(0.6 * 3600, 10))).toBeCloseTo(0.6, 10);
  });

  it('are not compared by day, nor in a full pan', () => {
    const day = emptyLoop(site).set({ panOutletC: 15.6, panInletC: 15, panSheetC: 15 });
    expect(offset(day.run(5 * 3600, 10))).toBeUndefined();
    const loop = night(10.6).run(3 * 3600, 10);
    loop.state = {
      ...loop.state,
      phase: { name: 'resting', sinceMs: 0 },
      water: { ...loop.state.water, level: 'full' },
    };
    expect(loop.step().state.meter.night).toBeNull();
  });

  it('tell the meter what the outlet shows too much', () => {
    const loop = emptyLoop(site);
    loop.state = { ...loop.state, learnt: { endsOffsetK: 0.5 } };
    loop
      .set({ panSheetC: 40, panOutletC: 40 })
      .until('circulating')
      .set({ panOutletC: 30, panSheetC: 30, panInletC: 20 });
    expect(loop.run(60).last.meter.heatRateW).toBeCloseTo(streamHeatW(20, 29.5, 20, 20), 6);
    expect(loop.last.meter.errorFraction).toBeCloseTo(0.2 + 0.6 / 9.5 + 0.005 + 0.03 / 9.5, 10);
  });
});
