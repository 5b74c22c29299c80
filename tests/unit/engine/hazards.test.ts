import { describe, expect, it } from 'vitest';
import { hazards } from '../../../controller/engine/hazards/table.ts';
import { initialState } from '../../../controller/engine/index.ts';
import type { RawReading } from '../../../shared-types/readings.ts';
import { allSensors, circulatingLoop, emptyLoop, Loop, makeSite, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');
const level = makeSite('drain-valve', allSensors);
const broken: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };
const blindPan = { panOutletC: broken, panSheetC: broken, panInletC: broken };

describe('frost', () => {
  it.each(['panOutletC', 'panSheetC', 'panInletC'] as const)('empties when %s alone is cold', (channel) => {
    const loop = restingLoop(site)
      .set({ [channel]: 4 })
      .run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-measured']);
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    expect(loop.last.reasons.phase.text).toContain('the pan is at 4.0 °C');
  });

  it('skips every least time', () => {
    const loop = circulatingLoop(site, { leastOnS: 3600 }).set({ panInletC: 3 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-measured']);
  });

  it('lets the pan fill again only when all its temperatures held the release', () => {
    const loop = emptyLoop(site, { frostReleaseMin: 10 }).set({ panOutletC: 3 }).run(10);
    expect(loop.why).toBe('frost-measured');
    loop.set({ panSheetC: 40, panOutletC: 40, panInletC: 6.5 }).run(3600);
    expect([loop.phase, loop.why]).toEqual(['empty', 'frost-waiting-release']);
    loop.set({ panInletC: 8 }).run(500).set({ panInletC: 6.5 }).run(10).set({ panInletC: 8 }).run(500);
    expect(loop.phase).toBe('empty');
    loop.until('filling', 300);
  });

  it('judges by the air when no pan sensor works', () => {
    const loop = restingLoop(site)
      .set({ ...blindPan, ambientC: 6 })
      .run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-blind']);
    loop.set({ ambientC: 20 }).run(10);
    expect(loop.why).not.toBe('frost-blind');
  });

  it.each([
    [undefined, '2031-06-21', 'frost-all-sensors-failed'],
    [{ from: '10-01', to: '04-30' }, '2031-12-31', 'frost-all-sensors-failed'],
    [{ from: '10-01', to: '04-30' }, '2031-04-30', 'frost-all-sensors-failed'],
    [{ from: '10-01', to: '04-30' }, '2031-05-01', 'sensors-failed'],
    [{ from: '10-01', to: '04-30' }, '2031-09-30', 'sensors-failed'],
    [{ from: '05-01', to: '09-30' }, '2031-07-01', 'frost-all-sensors-failed'],
    [{ from: '05-01', to: '09-30' }, '2031-10-01', 'sensors-failed'],
  ])('blind to pan and air, season %o, on %s: %s', (frostSeason, day, code) => {
    const loop = restingLoop(makeSite('drain-valve', undefined, { frostSeason }));
    loop.localDay = day;
    loop.set({ ...blindPan, ambientC: broken }).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', code]);
  });

  it('keeps a pan that cannot be emptied warm from the store, with an alarm', () => {
    const loop = restingLoop(makeSite('corner')).set({ panSheetC: 3 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'frost-measured']);
    expect(loop.alarm('frost-danger')).toMatchObject({ active: true, priority: 'urgent' });
    loop.set({ panSheetC: 5 }).run(60);
    expect(loop.phase).toBe('circulating');
    loop.set({ panSheetC: 6.9 }).run(60);
    expect(loop.phase).toBe('circulating');
    loop.set({ panSheetC: 7 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['resting', 'frost-waiting-release']);
  });

  it('does not keep warm from a store that is as cold', () => {
    const loop = restingLoop(makeSite('corner')).set({ panSheetC: 3, storeBottomC: 4 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['resting', 'frost-measured']);
  });

  it('keeps warm for the least time on, then until the pan is as warm as the store', () => {
    const loop = restingLoop(makeSite('corner'), { leastOnS: 300 }).set({ storeBottomC: 6 }).run(10);
    loop.set({ panSheetC: 3 }).until('circulating', 10).set({ panSheetC: 5.5 }).run(280);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'frost-measured']);
    loop.run(30);
    expect([loop.phase, loop.why]).toEqual(['resting', 'frost-waiting-release']);
    loop.set({ panSheetC: 4.1 }).run(600);
    expect(loop.phase).toBe('resting');
    loop.set({ panSheetC: 3.9 }).run(10);
    expect(loop.phase).toBe('circulating');
  });

  it('stops keeping warm when the store is at frost itself', () => {
    const loop = restingLoop(makeSite('corner'), { leastOnS: 300 }).set({ panSheetC: 3 }).run(10);
    loop.set({ storeBottomC: 4 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['resting', 'frost-measured']);
    loop.set({ panSheetC: 1, storeBottomC: 4.9 }).run(60);
    expect(loop.phase).toBe('resting');
    loop.set({ storeBottomC: 5.1 }).run(10);
    expect(loop.phase).toBe('circulating');
  });

  it('fills no empty pan to keep it warm', () => {
    const loop = new Loop(makeSite('corner', allSensors)).set({ panLevelMm: 0, flowLMin: 0 }).step(null);
    loop.set({ panSheetC: 2 }).run(60);
    expect([loop.phase, loop.why]).toEqual(['resting', 'frost-measured']);
    expect(loop.alarm('frost-danger')).toBeUndefined();
  });

  it('keeps the alarm of a pan that cannot be emptied until the frost is released', () => {
    const loop = restingLoop(makeSite('corner'), { frostReleaseMin: 10 }).set({ panSheetC: 3 }).run(10);
    loop.set({ panSheetC: 8 }).run(580);
    expect(loop.alarm('frost-danger')).toMatchObject({ active: true });
    loop.run(120);
    expect(loop.alarm('frost-danger')).toMatchObject({ active: false });
  });

  it('rests where the pan cannot be emptied and nothing is measured', () => {
    const loop = circulatingLoop(makeSite('corner'))
      .set({ ...blindPan, ambientC: 2 })
      .run(10);
    expect([loop.phase, loop.why]).toEqual(['resting', 'frost-blind']);
    expect(loop.alarm('frost-danger')).toBeDefined();
  });

  it('raises the alarm when the pan does not empty in time', () => {
    const loop = restingLoop(level).set({ panOutletC: 3 }).run(60);
    expect(loop.alarm('frost-danger')).toBeUndefined();
    loop.run(60);
    expect(loop.alarm('frost-danger')).toMatchObject({ active: true, follows: 'not-emptying' });
  });
});

describe('a pan that does not empty at frost', () => {
  const shut = { pumpFraction: 0, drainOpen: false, ageMs: 100 };

  it('is kept warm once it is overdue and its level says full, and emptied as soon as it may', () => {
    const loop = restingLoop(level).set({ panOutletC: 3 }).run(90);
    expect(loop.phase).toBe('emptying');
    loop.run(20);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'frost-measured']);
    expect(loop.alarm('frost-danger')).toMatchObject({ active: true, follows: 'not-emptying' });
    loop.set({ flowLMin: 20 }).run(60).set({ panOutletC: 7.5 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-waiting-release']);
    loop.set({ panLevelMm: 0, flowLMin: 0 }).until('empty');
  });

  it('is kept warm when the device says that the drain is shut, where nothing measures the level', () => {
    const loop = restingLoop(site);
    loop.feedback = shut;
    loop.set({ panOutletC: 3 }).run(120);
    expect([loop.phase, loop.last.belief.water]).toEqual(['circulating', 'full']);
    loop.feedback = null;
    loop.run(60);
    expect(loop.phase).toBe('circulating');
  });

  it.each([
    ['the drain is said to be open', level, { pumpFraction: 0, drainOpen: true, ageMs: 100 }, {}],
    ['the store is hardly warmer', level, null, { storeBottomC: 8 }],
    ['the pan is half empty', level, null, { panLevelMm: 20 }],
    ['the store bottom cannot be read', level, null, { storeBottomC: broken }],
  ] as const)('is not kept warm when %s', (_, site, feedback, values) => {
    const loop = restingLoop(site).set(values).set({ panOutletC: 3 });
    loop.feedback = feedback;
    loop.run(300);
    expect(loop.last.belief.water).not.toBe('empty');
    expect(loop.phase).toBe('emptying');
  });

  it('is not kept warm when nobody knows whether it is full', () => {
    const loop = new Loop(site).set({ panOutletC: 3 });
    loop.feedback = shut;
    loop.run(300);
    expect([loop.phase, loop.last.belief.water]).toEqual(['emptying', 'unknown']);
  });

  it('is kept warm down to the frost temperature of the store, and no further', () => {
    const loop = restingLoop(level).set({ panOutletC: 3 }).until('circulating').set({ flowLMin: 20 });
    loop.set({ storeBottomC: 5 }).run(60);
    expect(loop.phase).toBe('circulating');
    loop.set({ storeBottomC: 4 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-measured']);
  });
});

describe('a store at frost', () => {
  const cold = { storeBottomC: 4, panSheetC: 40, panOutletC: 40 };

  it('has nothing filled from it, nor circulated to it', () => {
    const loop = emptyLoop(site).set(cold).run(1200);
    expect([loop.phase, loop.why]).toEqual(['empty', 'store-at-frost']);
    expect(loop.ask({ kind: 'run-pump', minutes: 5 })).toMatchObject({ code: 'hazard-forbids' });
    loop.set({ storeBottomC: 5 }).run(600);
    expect([loop.phase, loop.why]).toEqual(['empty', 'store-at-frost']);
    loop.set({ storeBottomC: 5.1 }).until('filling');
    const circulating = circulatingLoop(site).set({ storeBottomC: 4 }).run(10);
    expect([circulating.phase, circulating.why]).toEqual(['emptying', 'store-at-frost']);
    const corner = circulatingLoop(makeSite('corner')).set({ storeBottomC: 4 }).run(10);
    expect(corner.phase).toBe('resting');
  });
});

describe('a drain that stands open', () => {
  const open = { pumpFraction: 0, drainOpen: true, ageMs: 100 };

  it('stops the pump within 10 s, and locks the second time', () => {
    const loop = emptyLoop(site).set({ panSheetC: 40, panOutletC: 40 });
    loop.feedback = open;
    loop.until('filling').run(10);
    expect(loop.phase).toBe('filling');
    loop.step();
    expect([loop.phase, loop.why]).toEqual(['emptying', 'drain-stands-open']);
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    expect(loop.alarm('drain-stands-open')).toMatchObject({ active: true, priority: 'soon' });
    loop.until('filling').until('stopped', 20);
    expect(loop.alarm('fill-locked')).toMatchObject({ follows: 'drain-stands-open' });
  });

  it.each([
    ['the valve has closed after 10 s', { ...open, drainOpen: false }],
    ['nothing is heard of the drain', { ...open, drainOpen: null }],
    ['what was heard is too old', { ...open, ageMs: 61_000 }],
  ])('lets the pump run when %s', (_, then) => {
    const loop = emptyLoop(site).set({ panSheetC: 40, panOutletC: 40 }).until('filling');
    loop.feedback = open;
    loop.run(10);
    loop.feedback = then;
    loop.run(60);
    expect(loop.phase).toBe('filling');
  });

  it('is not believed of a time before the pump started, nor where there is no valve', () => {
    const loop = emptyLoop(site).set({ panSheetC: 40, panOutletC: 40 }).until('filling');
    for (let ageMs = 6000; ageMs < 60_000; ageMs += 5000) {
      loop.feedback = { ...open, ageMs };
      expect(loop.step().phase).toBe('filling');
    }
    const other = emptyLoop(makeSite('pump-stop')).set({ panSheetC: 40, panOutletC: 40 }).until('filling');
    other.feedback = open;
    expect(other.run(60).phase).toBe('filling');
  });

  it('stops a pump that circulates too', () => {
    const loop = circulatingLoop(site).run(60);
    loop.feedback = open;
    expect(loop.run(15).why).toBe('drain-stands-open');
  });
});

describe('heat', () => {
  it.each([
    ['storeTopC', 60, 80],
    ['storeBottomC', 60, 80],
    ['storeTopC', 55, 55],
  ] as const)(
    'ends the harvest when %s reaches %d °C of a store that stands %d °C',
    (channel, limitC, maximumC) => {
      const store = { volumeL: 800, headroomL: 500, heightM: 1.2, maximumC };
      const loop = restingLoop(makeSite('drain-valve', undefined, { store })).run(60);
      const other = channel === 'storeTopC' ? { storeBottomC: 30 } : {};
      loop.set({ panOutletC: limitC, panSheetC: limitC, ...other, [channel]: limitC }).run(300);
      expect([loop.phase, loop.why]).toEqual(['resting', 'store-limit']);
      loop.set({ panOutletC: limitC - 2.9, panSheetC: limitC - 2.9, [channel]: limitC - 2.9 }).run(300);
      expect([loop.phase, loop.why]).toEqual(['resting', 'store-limit']);
      loop.set({ panOutletC: limitC - 3.1, panSheetC: limitC - 3.1, [channel]: limitC - 3.1 }).run(10);
      expect(loop.why).not.toBe('store-limit');
    },
  );

  it('fills no pan for a full store', () => {
    const loop = emptyLoop(site).set({ storeTopC: 61, panSheetC: 60, panOutletC: 60 }).run(600);
    expect([loop.phase, loop.why]).toEqual(['empty', 'store-limit']);
  });

  it('empties a pan that cannot rest', () => {
    const loop = circulatingLoop(makeSite('pump-stop')).set({ storeTopC: 61 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'store-limit']);
  });

  it('cools the liner with the store, least times or not, until 3 K below', () => {
    const loop = restingLoop(site);
    loop.settings = { ...loop.settings, leastOffS: 3600 };
    loop.set({ panSheetC: 72 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'liner-heat']);
    loop.set({ panSheetC: 69.5 }).run(30);
    expect(loop.why).toBe('liner-heat');
    loop.set({ panSheetC: 68 }).run(10);
    expect(loop.why).not.toBe('liner-heat');
  });

  it('cools nothing with a pan that is no warmer than the store', () => {
    const loop = restingLoop(site).set({ panSheetC: 75, panOutletC: 20 }).run(30);
    expect(loop.phase).toBe('resting');
  });

  it('begins without heat', () => {
    const loop = emptyLoop(site).set({ storeTopC: 58, panSheetC: 70 }).run(10);
    const calm = { storeFull: false, linerHot: false, cooling: false };
    expect(loop.state.heat).toEqual(calm);
    expect(initialState().heat).toEqual(calm);
  });

  it('rests with an alarm when the store takes no more', () => {
    const loop = restingLoop(site).set({ panSheetC: 75, panOutletC: 70, storeTopC: 80.5 }).run(140);
    expect([loop.phase, loop.why]).toEqual(['resting', 'store-limit']);
    expect(loop.alarm('store-hot')).toMatchObject({ active: true });
    expect(loop.alarm('liner-hot')).toMatchObject({ active: true, follows: 'store-hot' });
  });

  it('keeps what it knew of heat while nothing can be read', () => {
    const loop = emptyLoop(site).set({ storeTopC: 61, panSheetC: 76 }).run(10);
    expect(loop.state.heat).toMatchObject({ storeFull: true, linerHot: true });
    loop.set({ ...blindPan, storeTopC: broken, storeBottomC: broken }).run(20);
    expect(loop.state.heat).toMatchObject({ storeFull: true, linerHot: true });
  });
});

describe('water movement', () => {
  it.each([5, 15, 20])(
    'stops a pump that moves no water after %d s at most, and 20 s in any case',
    (dryRunS) => {
      const loop = circulatingLoop(level, { dryRunS }).run(60).set({ flowLMin: 1.9 });
      let dryS = 0;
      while (loop.step().last.outputs.pumpFraction > 0) dryS += 5;
      expect(dryS + 5).toBeLessThanOrEqual(dryRunS);
      expect([loop.phase, loop.why]).toEqual(['emptying', 'dry-running']);
      expect(loop.alarm('dry-running')).toMatchObject({ active: true });
    },
  );

  it('does not mind a flow that falters for a step', () => {
    const loop = circulatingLoop(level).run(60).set({ flowLMin: 0 }).step().set({ flowLMin: 20 }).run(60);
    expect(loop.phase).toBe('circulating');
  });

  it('gives a filling pump time to draw water, then stops it', () => {
    const loop = emptyLoop(level).set({ panOutletC: 40, panSheetC: 40, flowLMin: 0, panLevelMm: 0 });
    loop.until('filling').run(120);
    expect(loop.phase).toBe('filling');
    loop.until('emptying', 20);
    expect(loop.why).toBe('dry-running');
  });

  it('stops when the pan runs empty under it', () => {
    const loop = circulatingLoop(level).run(60).set({ panLevelMm: 0 }).run(30);
    expect(loop.decisions.some((decision) => decision.reasons.phase.code === 'dry-running')).toBe(true);
    expect(loop.last.outputs.pumpFraction).toBe(0);
  });

  it('notices a resting pan that loses its water, and locks the second time', () => {
    const loop = restingLoop(level).run(60).set({ panLevelMm: 1 }).run(10);
    expect(loop.decisions.map((decision) => decision.reasons.phase.code)).toContain('water-lost');
    expect(loop.alarm('water-lost')).toMatchObject({ active: true });
    loop.set({ panOutletC: 40, panSheetC: 40 }).until('filling').set({ flowLMin: 20, panLevelMm: 40 });
    loop.until('circulating').set({ panOutletC: 21, panSheetC: 21 }).until('resting').set({ flowLMin: 0 });
    loop.set({ panLevelMm: 0 }).until('stopped', 30);
  });

  it('notices it even when the level cannot be read just then', () => {
    const loop = circulatingLoop(level, { leastOnS: 0, stopDelayS: 0 }).run(60);
    loop.set({ panLevelMm: 0, panOutletC: 21, panSheetC: 21 }).until('resting', 10);
    loop.set({ panLevelMm: broken }).step();
    expect([loop.phase, loop.last.reasons.phase.text]).toEqual(['emptying', 'The pan lost its water.']);
  });

  it('forgets a failure once a full pan was used and emptied as it should', () => {
    const loop = circulatingLoop(level).run(60).set({ flowLMin: 0 }).until('emptying').set({ panLevelMm: 0 });
    expect(loop.state.failure).toEqual({ count: 1, cause: 'dry-running' });
    loop.until('empty').set({ panOutletC: 40, panSheetC: 40 }).until('filling');
    loop.set({ flowLMin: 20, panLevelMm: 40 }).until('circulating');
    loop.set({ panOutletC: 21, panSheetC: 21 }).until('resting').set({ flowLMin: 0 });
    loop.until('emptying', 6000);
    expect(loop.state.failure).toEqual({ count: 0, cause: null });
    expect(loop.alarm('dry-running')).toMatchObject({ active: false, state: 'returned-unacknowledged' });
  });

  it('forgives a pan that cannot be emptied after ten minutes of flow', () => {
    const corner = makeSite('corner', [...allSensors]);
    const loop = circulatingLoop(corner).run(60).set({ flowLMin: 0 }).until('resting').set({ flowLMin: 20 });
    expect(loop.state.failure.count).toBe(1);
    loop.set({ panOutletC: 40, panSheetC: 40 }).until('circulating').run(595);
    expect(loop.state.failure.count).toBe(1);
    loop.run(15);
    expect(loop.state.failure.count).toBe(0);
  });
});

describe('blind sensing', () => {
  it.each([
    ['the store bottom', { storeBottomC: broken }, 'The store bottom'],
    ['outlet and sheet', { panOutletC: broken, panSheetC: broken }, 'The pan'],
    ['the store bottom, stale', { storeBottomC: { value: 20, ageMs: 61_000 } }, 'The store bottom'],
    ['the store bottom, absurd', { storeBottomC: 400 }, 'The store bottom'],
  ])('without %s the outputs are safe within 10 s', (_, values, named) => {
    const loop = circulatingLoop(site, { leastOnS: 3600 }).set(values).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'sensors-failed']);
    expect(loop.last.reasons.phase.text).toContain(named);
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
  });

  it('uses the full pan again when its sensors are back before it has emptied', () => {
    const loop = restingLoop(level).set({ storeBottomC: broken }).run(10);
    expect(loop.phase).toBe('emptying');
    loop.set({ storeBottomC: 20 }).run(10);
    expect(loop.phase).toBe('resting');
  });
});

describe('the list of protections', () => {
  it('lets no operator override any, and names each once', () => {
    expect(hazards.every((hazard) => hazard.override === 'never' && hazard.clears !== '')).toBe(true);
    expect(new Set(hazards.map((hazard) => hazard.code)).size).toBe(hazards.length);
  });

  it('puts frost above heat', () => {
    const loop = restingLoop(site).set({ panSheetC: 3, storeTopC: 80 }).run(10);
    expect(loop.why).toBe('frost-measured');
  });

  it('works on a loop that never stepped before', () => {
    expect(new Loop(site).set({ panOutletC: 2 }).step(null).why).toBe('frost-measured');
  });
});
