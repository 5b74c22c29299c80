import { describe, expect, it } from 'vitest';
import { step } from '../../../controller/engine/index.ts';
import type { RawReading } from '../../../shared-types/readings.ts';
import { allSensors, circulatingLoop, emptyLoop, Loop, makeSite, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');
const sunny = { panSheetC: 40, panOutletC: 40 };

describe('starting up', () => {
  it('counts the pan as full and keeps outputs safe until it has drained for its time', () => {
    const loop = new Loop(site).step(null);
    expect(loop.last.belief.water).toBe('unknown');
    loop.run(55);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'start-up-proving']);
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    loop.run(5);
    expect([loop.phase, loop.last.belief.water]).toEqual(['empty', 'empty']);
  });

  it('takes the very first step for a start, whatever it is told', () => {
    const loop = new Loop(site);
    const { state } = step(
      loop.state,
      { nowMs: 0, elapsedMs: 7000, localDay: '2031-06-21', readings: {}, feedback: null, request: null },
      site,
      loop.settings,
    );
    expect(state.water.drainedMs).toBe(0);
  });

  it('takes the pan for full when its level says so, and rests', () => {
    const loop = new Loop(makeSite('drain-valve', allSensors))
      .set({ panLevelMm: 39, flowLMin: 0 })
      .step(null);
    expect([loop.phase, loop.last.belief.water]).toEqual(['resting', 'full']);
  });

  it('takes the pan for empty at once when its level says so', () => {
    const loop = new Loop(makeSite('drain-valve', allSensors)).set({ panLevelMm: 1, flowLMin: 0 }).step(null);
    expect(loop.phase).toBe('empty');
  });

  it.each([
    ['nothing is heard of the device', null],
    ['it said so before the outputs could expire', { pumpFraction: 1, drainOpen: false, ageMs: 30_000 }],
    ['the pump stands', { pumpFraction: 0, drainOpen: true, ageMs: 1000 }],
  ])('begins anew after a gap in which outputs expire, when %s', (_, feedback) => {
    const loop = circulatingLoop(site);
    loop.feedback = feedback;
    loop.step(site.control.outputExpiryS + 30);
    expect([loop.phase, loop.last.belief.water]).toEqual(['emptying', 'unknown']);
    expect(loop.last.outputs.pumpFraction).toBe(0);
  });

  it('goes on after a gap that the outputs outlived, as the device says', () => {
    const loop = circulatingLoop(site);
    loop.feedback = { pumpFraction: 1, drainOpen: null, ageMs: 29_000 };
    expect(loop.step(site.control.outputExpiryS + 30).phase).toBe('circulating');
    const resting = restingLoop(site);
    resting.feedback = { pumpFraction: 0, drainOpen: false, ageMs: 0 };
    expect(resting.step(site.control.outputExpiryS + 30).phase).toBe('resting');
    resting.feedback = { pumpFraction: 0, drainOpen: null, ageMs: 0 };
    expect(resting.step(site.control.outputExpiryS + 30).phase).toBe('emptying');
  });

  it('goes on after a gap under outputs that were safe already', () => {
    expect(emptyLoop(site).step(3600).phase).toBe('empty');
    const level = new Loop(makeSite('drain-pump', allSensors)).set({ panLevelMm: 20, flowLMin: 0 });
    level.step(null).step(3600);
    expect(level.state.water.drainedMs).toBe(0);
  });

  it('rests with unknown water where the pan cannot be emptied', () => {
    const loop = new Loop(makeSite('corner')).step(null);
    expect([loop.phase, loop.last.belief.water]).toEqual(['resting', 'unknown']);
    loop.set(sunny).until('filling');
  });
});

describe('filling', () => {
  it('waits for the fill difference and its delay', () => {
    const loop = emptyLoop(site).run(60);
    expect(loop.why).toBe('waiting-for-sun');
    loop.set({ panSheetC: 29, panOutletC: 29 }).run(60);
    expect(loop.why).toBe('waiting-fill-difference');
    loop.set(sunny).run(35);
    expect([loop.phase, loop.why]).toEqual(['empty', 'waiting-fill-delay']);
    loop.step();
    expect([loop.phase, loop.why]).toEqual(['filling', 'filling-for-heat']);
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 1, drainOpen: false });
  });

  it('counts as filled after the fill time where nothing measures it', () => {
    const loop = emptyLoop(site).set(sunny).until('filling').run(95);
    expect(loop.phase).toBe('filling');
    loop.step();
    expect([loop.phase, loop.why, loop.last.belief.water]).toEqual(['circulating', 'filled', 'full']);
    expect(loop.last.meter.total).toMatchObject({ starts: 1, fills: 1 });
  });

  it('is proven by the level alone where there is one', () => {
    const loop = emptyLoop(makeSite('drain-valve', allSensors)).set({ ...sunny, panLevelMm: 0 });
    loop.until('filling').set({ flowLMin: 20, panLevelMm: 30 }).run(150);
    expect(loop.phase).toBe('filling');
    loop.set({ panLevelMm: 37 }).run(10);
    expect(loop.phase).toBe('circulating');
  });

  it('needs flow at the end of its time where flow is measured', () => {
    const flowSite = makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'flowLMin']);
    const loop = emptyLoop(flowSite).set({ panOutletC: 40, flowLMin: 0 }).until('filling').run(105);
    expect(loop.phase).toBe('filling');
    loop.set({ flowLMin: 18 }).step();
    expect(loop.phase).toBe('circulating');
  });

  it('fails at its timeout, empties, and locks the loop the second time until an operator lifts it', () => {
    const loop = emptyLoop(makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'panLevelMm']));
    loop.set({ panOutletC: 40, panLevelMm: 3 }).until('filling').run(195);
    expect(loop.phase).toBe('filling');
    loop.step();
    expect([loop.phase, loop.why]).toEqual(['emptying', 'fill-failed']);
    expect(loop.alarm('fill-failed')).toMatchObject({ active: true, priority: 'soon' });
    loop.until('filling').until('stopped');
    expect(loop.why).toBe('fill-failed');
    loop.step();
    expect(loop.why).toBe('fill-failed-locked');
    expect(loop.alarm('fill-locked')).toMatchObject({ follows: 'fill-failed' });
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    loop.run(600);
    expect(loop.phase).toBe('stopped');
    expect(loop.ask({ kind: 'run-pump', minutes: 5 })).toMatchObject({ code: 'hazard-forbids' });
    expect(loop.step(null).phase).toBe('stopped');
    expect(loop.ask({ kind: 'automatic' })).toMatchObject({ accepted: true });
    loop.until('empty').until('filling');
  });
});

describe('circulating and resting', () => {
  it('starts when the start difference has held for its delay', () => {
    const loop = restingLoop(site).run(60).set({ panOutletC: 27, panSheetC: 27 }).run(20);
    expect([loop.phase, loop.why]).toEqual(['resting', 'waiting-start-delay']);
    loop.step().step();
    expect([loop.phase, loop.why]).toEqual(['circulating', 'circulating-for-heat']);
    expect(loop.last.reasons.pump).toMatchObject({
      code: 'circulating-for-heat',
      text: 'Bringing heat home: the pan is 7.0 K above the store bottom; the pump stops at 2.0 K.',
    });
  });

  it('begins the delay anew when the difference gives way half-way', () => {
    const loop = restingLoop(site).run(60).set({ panOutletC: 27, panSheetC: 27 }).run(20);
    loop.set({ panOutletC: 25, panSheetC: 25 }).run(15).set({ panOutletC: 27, panSheetC: 27 }).run(20);
    expect(loop.phase).toBe('resting');
  });

  it('stops when the stop difference has held, and says what it waits for', () => {
    const loop = circulatingLoop(site).run(60).set({ panOutletC: 21.9, panSheetC: 21.9 }).run(30);
    expect([loop.phase, loop.why]).toEqual(['resting', 'resting-no-gain']);
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 0, drainOpen: false });
    loop.step();
    expect(loop.why).toBe('waiting-start-difference');
  });

  it('holds the least times and the starts of an hour', () => {
    const corner = makeSite('corner');
    const loop = circulatingLoop(corner, { leastOnS: 600, leastOffS: 300, startsPerHour: 2 });
    loop.set({ panOutletC: 21, panSheetC: 21 }).run(100);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'circulating-least-on']);
    loop.until('resting').set({ panOutletC: 30, panSheetC: 30 }).run(200);
    expect([loop.phase, loop.why]).toEqual(['resting', 'waiting-least-off']);
    loop.until('circulating').set({ panOutletC: 21, panSheetC: 21 }).until('resting');
    loop.set({ panOutletC: 30, panSheetC: 30 }).run(400);
    expect([loop.phase, loop.why]).toEqual(['resting', 'waiting-starts-per-hour']);
    loop.until('circulating', 3600);
  });

  it('starts as soon as the least time off is full', () => {
    const loop = restingLoop(site, { startDelayS: 0, leastOffS: 60 }).set({ panOutletC: 30, panSheetC: 30 });
    loop.run(55);
    expect([loop.phase, loop.why]).toEqual(['resting', 'waiting-least-off']);
    expect(loop.step().phase).toBe('circulating');
    expect(loop.step(0).phase).toBe('circulating');
  });

  it('lets a pan that empties with the pump settle after its fill, then empties it when it gains nothing', () => {
    const loop = emptyLoop(makeSite('pump-stop')).set(sunny).until('circulating');
    loop.set({ panOutletC: 20, panSheetC: 20 }).run(2400 - 100);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'circulating-least-on']);
    loop.until('emptying');
    expect(loop.why).toBe('emptying-no-gain');
    expect(loop.last.reasons.drain.code).toBe('output-not-fitted');
  });

  it('does not lose a delay to one doubtful sample, nor ends it by one', () => {
    const once: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };
    const warm = { panOutletC: 27, panSheetC: 27 };
    const loop = restingLoop(site)
      .run(60)
      .set(warm)
      .run(20)
      .set({ panOutletC: once })
      .step()
      .set(warm)
      .step();
    expect(loop.phase).toBe('circulating');
    const late = restingLoop(site).run(60).set(warm).run(25).set({ panOutletC: once }).step();
    expect([late.phase, late.why]).toEqual(['resting', 'waiting-start-delay']);
    const fill = emptyLoop(site).set(sunny).run(20).set({ panSheetC: once }).step().set(sunny).run(15);
    expect(fill.phase).toBe('filling');
    const lateFill = emptyLoop(site).set(sunny).run(35).set({ panSheetC: once }).step();
    expect([lateFill.phase, lateFill.why]).toEqual(['empty', 'waiting-fill-delay']);
  });

  it('starts by no doubtful reading', () => {
    const loop = restingLoop(site).run(60);
    loop.set({ panOutletC: { value: null, ageMs: 100, fault: 'open-circuit' }, panSheetC: 40 }).step();
    expect(loop.last.belief.readings.panOutletC).toMatchObject({ quality: 'doubtful' });
    expect(loop.last.belief.differenceK).toBeCloseTo(1.5);
  });
});

describe('emptying for heat', () => {
  it('brings the heat of a pan home that gained nothing for the time set', () => {
    const loop = restingLoop(site, { emptyAfterMin: 10 }).run(595);
    expect([loop.phase, loop.why]).toEqual(['resting', 'resting-no-gain']);
    loop.until('emptying', 10);
    expect(loop.why).toBe('emptying-no-gain');
    expect(loop.last.reasons.pump.code).toBe('pump-off-while-emptying');
    expect(loop.until('empty').why).toBe('emptied');
    expect(loop.last.meter.total.heatHomeJ).toBeGreaterThan(0);
  });

  it('waits while the pan warms', () => {
    const loop = restingLoop(site, { emptyAfterMin: 10 });
    for (let warmC = 21.5; warmC < 25; warmC += 0.6)
      loop.set({ panOutletC: warmC, panSheetC: warmC }).run(300);
    expect(loop.phase).toBe('resting');
  });

  it('does not cool the store with a pan that is colder, and uses it again when the sun is back', () => {
    const loop = restingLoop(site, { emptyAfterMin: 10 }).set({ storeBottomC: 24 }).run(3600);
    expect([loop.phase, loop.why]).toEqual(['resting', 'resting-colder-than-store']);
    loop.set({ panOutletC: 31, panSheetC: 31 }).until('circulating');
  });

  it('fills no pan for a quarter of an hour that was emptied for want of gain', () => {
    const loop = restingLoop(site, { emptyAfterMin: 10 })
      .until('emptying')
      .until('empty')
      .set(sunny)
      .run(895);
    expect([loop.phase, loop.why]).toEqual(['empty', 'waiting-after-emptying']);
    expect(loop.step().phase).toBe('filling');
    const asked = restingLoop(site, { emptyAfterMin: 10 }).until('emptying').until('empty').run(60);
    asked.ask({ kind: 'run-pump', minutes: 5 });
    expect(asked.phase).toBe('filling');
  });

  it('stays full where the pan cannot be emptied', () => {
    const loop = restingLoop(makeSite('corner'), { emptyAfterMin: 10 }).run(3600);
    expect([loop.phase, loop.why]).toEqual(['resting', 'resting-no-gain']);
  });
});

describe('emptying that does not end', () => {
  const level = makeSite('drain-valve', allSensors);

  it('raises the alarm after one and a half drain times, and uses the full pan again', () => {
    const loop = restingLoop(level, { emptyAfterMin: 10 }).until('emptying').run(80);
    expect(loop.alarm('not-emptying')).toBeUndefined();
    loop.run(10);
    expect(loop.alarm('not-emptying')).toMatchObject({ active: true, priority: 'urgent' });
    expect(loop.phase).toBe('resting');
    loop.run(500);
    expect(loop.phase).toBe('resting');
    loop.until('emptying').set({ panLevelMm: 20 }).run(120);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'not-emptying']);
    loop.set({ panLevelMm: 0 }).until('empty').run(70);
    expect(loop.alarm('not-emptying')).toMatchObject({ state: 'returned-unacknowledged' });
  });

  it('believes no time while the device says that the drain is shut', () => {
    const loop = restingLoop(site, { emptyAfterMin: 10 });
    loop.feedback = { pumpFraction: 0, drainOpen: false, ageMs: 100 };
    loop.ask({ kind: 'empty' });
    loop.run(85);
    expect([loop.phase, loop.last.belief.water]).toEqual(['emptying', 'full']);
    expect(loop.alarm('not-emptying')).toBeUndefined();
    loop.run(10);
    expect(loop.alarm('not-emptying')).toMatchObject({ active: true });
    loop.feedback = { pumpFraction: 0, drainOpen: true, ageMs: 100 };
    loop.run(55);
    expect(loop.phase).toBe('emptying');
    loop.run(10);
    expect(loop.phase).toBe('empty');
  });

  it('believes no time for which the level was seen full, should the level be lost', () => {
    const loop = restingLoop(level).run(60);
    loop.ask({ kind: 'empty' });
    loop.run(300).without('panLevelMm').run(55);
    expect([loop.phase, loop.last.belief.water]).toEqual(['emptying', 'full']);
    expect(loop.alarm('not-emptying')).toMatchObject({ active: true });
    loop.run(5);
    expect(loop.phase).toBe('empty');
  });

  it('goes on while an operator wants the pan empty', () => {
    const loop = restingLoop(level).run(60);
    loop.ask({ kind: 'empty' });
    loop.run(300);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'not-emptying']);
  });

  it('drains again when water is found in an empty pan', () => {
    const loop = new Loop(level).set({ panLevelMm: 0, flowLMin: 0 }).step(null).step();
    expect(loop.phase).toBe('empty');
    loop.set({ panLevelMm: 20 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'start-up-proving']);
  });

  it('runs a drain pump to the real end, or for the whole drain time', () => {
    const pumped = makeSite('drain-pump', allSensors);
    const loop = new Loop(pumped)
      .set({ panLevelMm: 20, flowLMin: 0 })
      .step(null)
      .set({ panLevelMm: 3 })
      .run(30);
    expect([loop.phase, loop.last.reasons.drain.code]).toEqual(['emptying', 'drain-pump-runs']);
    loop.set({ panLevelMm: 1 }).run(10);
    expect([loop.phase, loop.last.outputs.drainPumpOn]).toEqual(['empty', false]);
    expect(loop.last.reasons.drain.code).toBe('drain-pump-off');
    const long = new Loop(pumped).set({ panLevelMm: 3, flowLMin: 0 }).step(null).run(55);
    expect(long.phase).toBe('emptying');
    expect(long.step().phase).toBe('empty');
    expect(long.run(600).phase).toBe('empty');
    const locked = new Loop(pumped).set({ panLevelMm: 3, flowLMin: 0 }).step(null);
    locked.state = { ...locked.state, failure: { count: 2, cause: 'dry-running' } };
    locked.run(50);
    expect([locked.phase, locked.last.outputs.drainPumpOn]).toEqual(['stopped', true]);
    locked.run(60);
    expect(locked.last.outputs.drainPumpOn).toBe(false);
  });

  it('says of a drain pump what it does, not that a drain is closed', () => {
    const circulating = circulatingLoop(makeSite('drain-pump')).last;
    expect(circulating.outputs).toMatchObject({ drainOpen: true, drainPumpOn: false });
    expect(circulating.reasons.drain.code).toBe('drain-pump-off');
    const spent = new Loop(makeSite('drain-pump', allSensors))
      .set({ panLevelMm: 20, flowLMin: 0 })
      .step(null);
    expect([spent.run(200).phase, spent.last.reasons.drain.code]).toEqual(['emptying', 'drain-pump-off']);
  });

  it('runs a drain pump while emptying, and not for ever', () => {
    const loop = new Loop(makeSite('drain-pump', allSensors)).set({ panLevelMm: 20, flowLMin: 0 }).step(null);
    expect(loop.last.outputs).toMatchObject({ drainPumpOn: true, drainOpen: true });
    loop.run(115);
    expect(loop.last.outputs.drainPumpOn).toBe(true);
    loop.run(5);
    expect(loop.last.outputs.drainPumpOn).toBe(false);
    loop.set({ panLevelMm: 0 }).until('empty');
  });
});
