import { describe, expect, it } from 'vitest';
import { panHeatJK } from '../../../../controller/engine/pan.ts';
import { streamHeatW, waterDensityKgM3, waterHeatJKgK } from '../../../../controller/engine/water.ts';
import type { Channel } from '../../../../shared-types/channels.ts';
import type { RawReading } from '../../../../shared-types/readings.ts';
import { circulatingLoop, emptyLoop, type Loop, makeSite } from '../rig.ts';

const broken: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };
const home = (loop: Loop) => loop.last.meter.total.heatHomeJ;

describe('a loop with a drain-back reservoir', () => {
  const sensors: readonly Channel[] = ['panOutletC', 'panSheetC', 'storeBottomC', 'reservoirC'];
  const site = makeSite('drain-valve', sensors, { plumbing: 'reservoir' });

  it('books the emptied pan against the reservoir as it was at the fill, once', () => {
    const loop = emptyLoop(site).set({ reservoirC: 15, panOutletC: 40, panSheetC: 40 }).until('filling');
    loop.run(50).set({ reservoirC: 30, panOutletC: 30, panSheetC: 30 }).until('circulating').run(30);
    const before = home(loop);
    loop.set({ storeBottomC: 90, panOutletC: 30, panSheetC: 30 });
    loop.ask({ kind: 'empty' });
    loop.until('empty');
    const fillC = (15 * 55 + 30 * 45) / 100;
    // While the pump ran on, outlet and reservoir were alike; the median lags by a sample.
    expect((home(loop) - before) / (panHeatJK(site, 26) * (30 - fillC))).toBeCloseTo(1, 1);
    const after = home(loop);
    expect(home(loop.run(600))).toBe(after);
  });
});

describe('a loop without an outlet sensor', () => {
  const site = makeSite('drain-valve', ['panSheetC', 'storeBottomC', 'flowLMin']);
  const streamWK = (20 / 60_000) * waterDensityKgM3(20) * waterHeatJKgK(20);

  it('takes the outlet from the sheet over the middle, and says so', () => {
    const loop = circulatingLoop(site).set({ panSheetC: 24, storeBottomC: 20 }).run(12_000);
    const outletC = 20 + 4 / (0.5 + streamWK / 2000);
    expect((loop.last.meter.heatRateW ?? 0) / streamHeatW(20, outletC, 20, 20)).toBeCloseTo(1, 4);
    expect(loop.last.meter.estimated).toBe(true);
  });

  it('leaves out the heat that warms the water in the pan', () => {
    const loop = circulatingLoop(site).set({ panSheetC: 24, storeBottomC: 20 }).run(12_000);
    const steadyW = loop.last.meter.heatRateW ?? 0;
    let sheetC = 24;
    for (let i = 0; i < 400; i++) {
      sheetC += 0.001;
      loop.set({ panSheetC: sheetC }).step();
    }
    // 0.2 mK/s, and the sheet 0.4 K warmer than before.
    const storedK = (panHeatJK(site, 20) * 0.0002) / 2000;
    expect((loop.last.meter.heatRateW ?? 0) / steadyW).toBeCloseTo((4.4 - storedK) / 4, 2);
  });

  it('knows what of the total rests on that', () => {
    const loop = circulatingLoop(site).set({ panSheetC: 24, storeBottomC: 20 }).run(600);
    expect(loop.last.meter.estimatedJ).toBeGreaterThan(0);
    expect(loop.last.meter.estimatedJ).toBe(home(loop));
    loop.ask({ kind: 'empty' });
    loop.until('empty');
    // But for half a step at the end, in which nothing flowed any more.
    expect(loop.last.meter.estimatedJ / home(loop)).toBeCloseTo(1, 2);
  });

  it('that is fitted but failed counts nothing instead', () => {
    const loop = circulatingLoop(makeSite('drain-valve')).run(60).set({ panOutletC: broken }).run(10);
    expect(loop.last.meter.heatRateW).toBeNull();
  });
});

describe('what a fill moves beyond the volume of the pan', () => {
  const sensors: readonly Channel[] = ['panOutletC', 'panSheetC', 'panInletC', 'storeBottomC', 'flowLMin'];
  const site = makeSite('pump-stop', sensors);

  it('has come home as warm as what comes at its end', () => {
    const loop = emptyLoop(site, { fillTimeS: 1500, fillTimeoutS: 1800 });
    loop.set({ panSheetC: 40, panOutletC: 40 }).until('filling').set({ flowLMin: 24 });
    loop.set({ panOutletC: 23, panSheetC: 23, panInletC: 20 }).until('circulating', 1800);
    // 400 L are in the pan after 1000 s; 500 s of 24 L/min went on, but for what the pump moved unseen at first.
    expect(home(loop) / (streamHeatW(24, 23, 20, 20) * 500)).toBeCloseTo(1, 1);
  });

  it('is nothing while the pan takes it all, and is not told without its temperatures', () => {
    const little = emptyLoop(site).set({ panSheetC: 40, panOutletC: 40 }).until('filling');
    expect(home(little.set({ flowLMin: 24 }).until('circulating'))).toBe(0);
    const blind = emptyLoop(site, { fillTimeS: 1500, fillTimeoutS: 1800 });
    blind.set({ panSheetC: 40, panOutletC: 40 }).until('filling').set({ flowLMin: 24, panOutletC: broken });
    expect(home(blind.until('circulating', 1800))).toBe(0);
  });
});

describe('the stated error of a reading', () => {
  const site = makeSite('drain-valve', ['panOutletC', 'panSheetC', 'storeBottomC', 'flowLMin']);
  const steady = (flowLMin: number) =>
    circulatingLoop(site).set({ panOutletC: 30, panSheetC: 30, storeBottomC: 20, flowLMin }).run(60);

  it('takes two sensors that nobody compared as they are', () => {
    // Flow 3.05 %, pair 1 K of 10 K, calculator 0.8 %.
    expect(steady(20).last.meter.errorFraction).toBeCloseTo(0.0305 + 0.1 + 0.008, 10);
    expect(steady(2).last.meter.errorFraction).toBeCloseTo(0.035 + 0.1 + 0.008, 10);
  });

  it('is that of the standard once they were compared well enough', () => {
    const loop = steady(20);
    loop.state = { ...loop.state, learnt: { outletOffsetK: 0, outletOffsetSdK: 0.05 } };
    expect(loop.step().last.meter.errorFraction).toBeCloseTo(0.0305 + 0.014 + 0.008, 10);
    loop.state = { ...loop.state, learnt: { outletOffsetK: 0, outletOffsetSdK: 0.2 } };
    expect(loop.step().last.meter.errorFraction).toBeCloseTo(0.0305 + 0.04 + 0.008, 10);
  });

  it('grows with a flow that is not measured', () => {
    const loop = steady(20).set({ flowLMin: broken }).run(10);
    expect(loop.last.meter.errorFraction).toBeCloseTo(0.2 + 0.1 + 0.008, 10);
  });

  it('is told only while heat flows', () => {
    expect(steady(20).set({ panOutletC: 20 }).run(15).last.meter.errorFraction).toBeNull();
    expect(steady(20).set({ flowLMin: 0 }).step().last.meter.errorFraction).toBeNull();
    expect(emptyLoop(site).last.meter.errorFraction).toBeNull();
  });
});

describe('flow that is not measured', () => {
  it('is the full flow that was learnt', () => {
    const loop = circulatingLoop(makeSite('drain-valve'));
    loop.state = { ...loop.state, learnt: { fullFlowLMin: 17 } };
    expect(loop.step().last.meter).toMatchObject({ flowLMin: 17, estimated: true });
  });
});
