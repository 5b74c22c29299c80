import { describe, expect, it } from 'vitest';
import { panHeatJK } from '../../../controller/engine/pan.ts';
import { streamHeatW } from '../../../controller/engine/water.ts';
import type { RawReading } from '../../../shared-types/readings.ts';
import { allSensors, circulatingLoop, emptyLoop, type Loop, makeSite, restingLoop } from './rig.ts';

const level = makeSite('drain-valve', allSensors);
const broken: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };

/** Circulates steadily, 30 °C from the pan against 20 °C to it, at 20 L/min. */
function steady(loop: Loop = circulatingLoop(level)): Loop {
  return loop.set({ panOutletC: 30, panSheetC: 30, panInletC: 20, flowLMin: 20, pumpPowerW: 40 }).run(60);
}

const steadyW = streamHeatW(20, 30, 20, 20);

describe('heat', () => {
  it('is flow times enthalpy difference, added over time', () => {
    const loop = steady();
    const before = loop.last.meter.total.heatHomeJ;
    loop.run(600);
    expect(loop.last.meter.heatRateW).toBeCloseTo(steadyW, 6);
    expect(loop.last.meter.total.heatHomeJ - before).toBeCloseTo(600 * steadyW, 3);
    expect(loop.last.meter).toMatchObject({ flowLMin: 20, estimated: false });
  });

  it('is the trapezoid between two samples', () => {
    const loop = steady();
    const before = loop.last.meter.total.heatHomeJ;
    loop.set({ flowLMin: 10 }).step(10);
    expect(loop.last.meter.total.heatHomeJ - before).toBeCloseTo(10 * 0.75 * steadyW, 6);
  });

  it('is not counted across a gap longer than the limit', () => {
    const patient = makeSite('drain-valve', allSensors, { control: { stepS: 5, outputExpiryS: 300 } });
    const loop = steady(circulatingLoop(patient));
    const { heatHomeJ, electricityJ, pumpRunS } = loop.last.meter.total;
    loop.step(121);
    expect(loop.last.meter.total).toMatchObject({ heatHomeJ, electricityJ, pumpRunS });
    loop.step(120);
    expect(loop.last.meter.total.heatHomeJ).toBeGreaterThan(heatHomeJ);
  });

  it.each([
    ['the outlet', { panOutletC: broken }],
    ['inlet and store bottom', { panInletC: broken, storeBottomC: broken }],
  ])('is not counted while %s cannot be read', (_, values) => {
    const loop = steady();
    const { heatHomeJ } = loop.last.meter.total;
    loop.set(values).step();
    expect(loop.last.meter.heatRateW).toBeNull();
    expect(loop.last.meter.total.heatHomeJ).toBe(heatHomeJ);
    loop.set({ panOutletC: 30, panInletC: 20, storeBottomC: 20 }).step();
    expect(loop.last.meter.total.heatHomeJ).toBe(heatHomeJ);
    expect(loop.step().last.meter.total.heatHomeJ).toBeGreaterThan(heatHomeJ);
  });

  it('takes the store bottom where the inlet cannot be read', () => {
    const loop = steady().set({ panInletC: broken, storeBottomC: 22 }).run(30);
    expect(loop.last.meter.heatRateW).toBeCloseTo(streamHeatW(20, 30, 22, 22), 6);
  });

  it('takes the reservoir before the store where there is one', () => {
    const sensors = ['panOutletC', 'storeBottomC', 'reservoirC'] as const;
    const loop = circulatingLoop(makeSite('drain-valve', sensors, { plumbing: 'reservoir' }));
    loop.set({ panOutletC: 30, reservoirC: 25 }).run(60);
    expect(loop.last.meter.heatRateW).toBeCloseTo(streamHeatW(20, 30, 25, 25), 6);
    expect(loop.last.outputs.exchangerPumpOn).toBe(true);
    loop.ask({ kind: 'empty' });
    const { heatHomeJ } = loop.last.meter.total;
    loop.until('empty');
    expect(loop.last.meter.total.heatHomeJ - heatHomeJ).toBeLessThan(10 * steadyW);
  });

  it('is not told behind an exchanger whose own water is not measured', () => {
    const sensors = ['panOutletC', 'storeBottomC'] as const;
    const loop = circulatingLoop(makeSite('drain-valve', sensors, { plumbing: 'reservoir' })).run(60);
    expect(loop.last.meter).toMatchObject({ heatRateW: null, total: { heatHomeJ: 0, heatLostJ: 0 } });
  });

  it('is estimated from the rating of the pump where no flow is measured', () => {
    const loop = circulatingLoop(makeSite('drain-valve')).set({ panOutletC: 30, panInletC: 20 }).run(60);
    expect(loop.last.meter).toMatchObject({ flowLMin: 20, estimated: true });
    expect(loop.last.meter.heatRateW).toBeCloseTo(steadyW, 6);
    const noFlow = steady().set({ flowLMin: broken }).run(5);
    expect(noFlow.last.meter).toMatchObject({ estimated: true });
  });

  it('that leaves the store has a total of its own', () => {
    const loop = steady(circulatingLoop(level, { stopDelayS: 1800 }));
    const { heatHomeJ, heatLostJ } = loop.set({ panOutletC: 17 }).run(15).last.meter.total;
    loop.run(100);
    expect(loop.last.meter.total.heatHomeJ).toBe(heatHomeJ);
    expect(loop.last.meter.total.heatLostJ - heatLostJ).toBeCloseTo(100 * streamHeatW(20, 20, 17, 20), 3);
  });

  it('of a reversed flow is none', () => {
    expect(steady().set({ flowLMin: -15 }).step().last.meter.heatRateW).toBe(0);
  });

  it('is nothing while nothing circulates', () => {
    expect(restingLoop(level).run(30).last.meter.heatRateW).toBe(0);
  });
});

describe('heat of an emptied pan', () => {
  const site = makeSite('drain-valve');

  it('comes home once, against the store as it was at the fill', () => {
    const loop = restingLoop(site).set({ panOutletC: 25, panSheetC: 23, storeBottomC: 21 }).run(30);
    const { heatHomeJ } = loop.last.meter.total;
    loop.ask({ kind: 'empty' });
    expect(loop.last.meter.total.heatHomeJ).toBe(heatHomeJ);
    loop.until('empty');
    expect(loop.last.meter.total.heatHomeJ - heatHomeJ).toBeCloseTo(panHeatJK(site, 22) * 4, 3);
    const home = loop.last.meter.total.heatHomeJ;
    loop.run(600);
    expect(loop.last.meter.total.heatHomeJ).toBe(home);
  });

  it.each(['panInletC', 'storeBottomC'] as const)('counts from the mean of %s during the fill', (channel) => {
    const loop = emptyLoop(site).set({ panOutletC: 40, panSheetC: 40 }).until('filling');
    if (channel === 'storeBottomC') loop.set({ panInletC: broken });
    loop
      .set({ [channel]: 30 })
      .run(50)
      .set({ [channel]: 26 });
    loop.until('circulating').set({ panOutletC: 27, panSheetC: 27 });
    loop.ask({ kind: 'rest', minutes: 10 });
    loop.until('resting').run(30);
    const { heatHomeJ, heatLostJ } = loop.last.meter.total;
    loop.ask({ kind: 'empty' });
    loop.until('empty');
    // 50 s at 30 °C and 50 s at 26 °C, but that the median of three lags by a sample.
    const { total } = loop.last.meter;
    const netJ = total.heatHomeJ - heatHomeJ - (total.heatLostJ - heatLostJ);
    const meanC = (20 * 5 + 30 * 50 + 26 * 45) / 100;
    expect(netJ / (panHeatJK(site, 27) * (27 - meanC))).toBeCloseTo(1, 2);
  });

  it('takes the inlet for a part of the pan while the pump runs, and only then', () => {
    const runs = circulatingLoop(makeSite('pump-stop')).set({ panOutletC: 30, panSheetC: 26, panInletC: 22 });
    const { heatHomeJ } = runs.run(60).last.meter.total;
    runs.ask({ kind: 'empty' });
    runs.run(30);
    expect(runs.state.water.emptyingPanC).toBe(26);
    runs.until('empty');
    expect(runs.last.meter.total.heatHomeJ).toBeGreaterThan(heatHomeJ);
    const rests = restingLoop(site).set({ panOutletC: 30, panSheetC: 26, panInletC: 10 }).run(10);
    rests.ask({ kind: 'empty' });
    expect(rests.state.water.emptyingPanC).toBe(28);
  });

  it('counts as lost when the pan is colder', () => {
    const loop = restingLoop(site).set({ panOutletC: 3, panSheetC: 3, panInletC: 15 }).run(5);
    const { heatLostJ } = loop.last.meter.total;
    loop.until('empty');
    expect(loop.last.meter.total.heatLostJ - heatLostJ).toBeCloseTo(panHeatJK(site, 11.5) * 17, 3);
  });

  it('is not counted when the pan was not full, or its water could not be read', () => {
    const half = emptyLoop(site).set({ panSheetC: 40, panOutletC: 40 }).until('filling').run(50);
    half.ask({ kind: 'empty' });
    half.until('empty');
    expect(half.last.meter.total).toMatchObject({ heatHomeJ: 0, heatLostJ: 0 });
    const blind = restingLoop(site).set({ panOutletC: broken, panSheetC: broken }).until('emptying');
    const { heatHomeJ } = blind.last.meter.total;
    blind.until('empty');
    expect(blind.last.meter.total.heatHomeJ).toBe(heatHomeJ);
  });

  it('is not counted across a restart, which knows nothing of the water', () => {
    const loop = restingLoop(site).set({ panOutletC: 24, panSheetC: 24 });
    const { heatHomeJ } = loop.step(null).last.meter.total;
    loop.until('empty');
    expect(loop.last.meter.total.heatHomeJ).toBe(heatHomeJ);
  });
});

describe('other totals', () => {
  it('measure electricity where it is measured, else take the rating, and count running time', () => {
    const loop = steady();
    const { electricityJ, pumpRunS } = loop.last.meter.total;
    loop.run(100);
    expect(loop.last.meter.total.electricityJ - electricityJ).toBeCloseTo(100 * 40, 6);
    expect(loop.last.meter.total.pumpRunS - pumpRunS).toBe(100);
    const unmeasured = circulatingLoop(makeSite('drain-valve'));
    const before = unmeasured.last.meter.total.electricityJ;
    expect(unmeasured.run(100).last.meter.total.electricityJ - before).toBeCloseTo(100 * 50, 6);
  });

  it('begin a day at nothing, while totals go on', () => {
    const loop = steady();
    const { total } = loop.last.meter;
    expect(loop.last.meter.today).toEqual(total);
    loop.localDay = '2031-06-22';
    loop.step();
    expect(loop.last.meter.today).toMatchObject({ starts: 0, fills: 0, pumpRunS: 5 });
    expect(loop.last.meter.total.pumpRunS).toBe(total.pumpRunS + 5);
  });

  it('survive a restart', () => {
    const loop = steady();
    const { total } = loop.last.meter;
    expect(loop.step(null).last.meter.total).toEqual(total);
  });
});

/** Lets the pan change by `stepK` a step; returns where it ends [°C]. */
function drift(loop: Loop, fromC: number, stepK: number, steps: number): number {
  let panC = fromC;
  for (let i = 0; i < steps; i++) {
    panC += stepK;
    loop.set({ panOutletC: panC, panSheetC: panC }).step();
  }
  return panC;
}

describe('belief', () => {
  it('tells heat at stake and net gain of a full pan only', () => {
    const loop = restingLoop(level).set({ panOutletC: 25, panSheetC: 25 }).run(60);
    expect(loop.last.belief.heatAtStakeJ).toBeCloseTo(panHeatJK(level, 25) * 5, 3);
    expect(emptyLoop(makeSite('drain-valve')).last.belief).toMatchObject({
      heatAtStakeJ: null,
      netGainW: null,
    });
  });

  it('follows a steady warming within the lag of its smoothing', () => {
    const loop = restingLoop(level).run(60);
    drift(loop, 21.5, 0.001, 720);
    const { netGainW } = loop.last.belief;
    // The median of three lags by one sample, which changes nothing of a ramp.
    expect((netGainW ?? 0) / (panHeatJK(level, 22) * 0.0002)).toBeCloseTo(1, 1);
  });

  it('tells the time to freezing while the pan cools', () => {
    const loop = restingLoop(makeSite('corner', allSensors)).run(60);
    expect(loop.last.belief.timeToFreezingS).toBeNull();
    const panC = drift(loop, 21.5, -0.005, 1440);
    const seconds = loop.last.belief.timeToFreezingS ?? 0;
    expect(seconds / (panC / 0.001)).toBeCloseTo(1, 1);
  });

  it('calls flow proven only when it is measured', () => {
    expect(steady().last.belief.flowProven).toBe(true);
    expect(steady().set({ flowLMin: 1 }).step().last.belief.flowProven).toBe(false);
    expect(circulatingLoop(makeSite('drain-valve')).last.belief.flowProven).toBe(false);
    expect(restingLoop(level).set({ flowLMin: 20 }).step().last.belief.flowProven).toBe(false);
  });
});
