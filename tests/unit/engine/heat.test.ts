import { describe, expect, it } from 'vitest';
import { comesHomeFraction } from '../../../controller/engine/hazards/heat.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import { allSensors, circulatingLoop, emptyLoop, type Loop, makeSite, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');
const level = makeSite('drain-valve', allSensors);

function at(loop: Loop, nowMs: number): Loop {
  loop.nowMs = nowMs;
  loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: nowMs } };
  return loop;
}

const midnight = Date.UTC(2031, 5, 22, 2);

describe('a store that is nearly full', () => {
  it('counts what the pump still brings: two minutes of flow into a sixth of it', () => {
    expect(comesHomeFraction(site)).toBeCloseTo((2 * 20 * 6) / 800, 12);
    expect(comesHomeFraction(makeSite('corner'))).toBeCloseTo(0.3, 12);
  });

  it('counts all the water of a pan that empties with its pump, where that comes home', () => {
    expect(comesHomeFraction(makeSite('pump-stop'))).toBeCloseTo(400 / 800, 12);
    const reservoir = makeSite('pump-stop', undefined, { plumbing: 'reservoir' });
    expect(comesHomeFraction(reservoir)).toBeCloseTo(0.3, 12);
    const store = { volumeL: 100, headroomL: 900, heightM: 1.2 };
    const small = makeSite('pump-stop', undefined, { plumbing: 'reservoir', store });
    expect(comesHomeFraction(small)).toBe(1);
  });

  it.each([
    [70, 50, 55.6, 'circulating'],
    [70, 50, 55.8, 'resting'],
  ])('a pan of %d °C over %d °C', (panC, bottomC, topC, phase) => {
    const loop = circulatingLoop(site).run(60);
    loop.set({ panOutletC: panC, panSheetC: panC, storeBottomC: bottomC, storeTopC: topC }).run(20);
    expect(loop.phase).toBe(phase);
  });

  it('ends its harvest exactly where the two make the limit', () => {
    const loop = circulatingLoop(site).run(60).set({ storeBottomC: 50, storeTopC: 57 });
    // 57 + 0.3 * (67 - 57) = 60
    loop.set({ panOutletC: 66.9, panSheetC: 66.9 }).run(20);
    expect(loop.phase).toBe('circulating');
    loop.set({ panOutletC: 67, panSheetC: 67 }).run(20);
    expect([loop.phase, loop.why]).toEqual(['resting', 'store-limit']);
  });

  it('is judged by itself while the pan is empty', () => {
    const loop = emptyLoop(site).set({ storeTopC: 59.9, panSheetC: 90, panOutletC: 90 }).run(20);
    expect(loop.state.heat.storeFull).toBe(false);
    expect(loop.set({ storeTopC: 60 }).run(20).state.heat.storeFull).toBe(true);
  });
});

describe('a pan over a full store', () => {
  const tough = { pan: { grossAreaM2: 10.2, wettedAreaM2: 10, waterDepthM: 0.04, linerLimitC: 110 } };
  const full = (settings: Partial<Settings>, changes: object = {}) =>
    restingLoop(makeSite('drain-valve', undefined, changes), settings).set({ storeTopC: 61 });

  it.each([
    ['rests as it is set by default', {}, tough, { panOutletC: 15, panSheetC: 15 }, 'resting'],
    [
      'empties where that is set',
      { emptyWhenStoreFull: 1 },
      tough,
      { panOutletC: 20, panSheetC: 20 },
      'emptying',
    ],
    ['rests while it would bring heat', { emptyWhenStoreFull: 1 }, tough, { panOutletC: 20.1 }, 'resting'],
    ['rests where the dry sheet is too hot', { emptyWhenStoreFull: 1 }, {}, { panOutletC: 15 }, 'resting'],
  ] as const)('%s', (_, settings, changes, values, phase) => {
    const loop = full(settings, changes).set(values).run(20);
    expect([loop.phase, loop.why]).toEqual([phase, 'store-limit']);
  });

  it('empties by night whatever its liner stands, and where its water goes into a reservoir', () => {
    const night = at(full({ emptyWhenStoreFull: 1 }), midnight).set({ ambientC: 25, panOutletC: 15 });
    expect(night.run(20).phase).toBe('emptying');
    const reservoir = full({ emptyWhenStoreFull: 1 }, { ...tough, plumbing: 'reservoir' });
    expect(reservoir.set({ panOutletC: 40 }).run(20).phase).toBe('emptying');
  });
});

describe('the liner', () => {
  it('is said to be hot while water cools it, and urgently when none does', () => {
    const loop = restingLoop(site).set({ panSheetC: 75 }).run(90);
    expect(loop.phase).toBe('circulating');
    expect(loop.alarm('liner-hot')).toMatchObject({ active: true, priority: 'soon' });
    expect(loop.alarm('liner-not-cooled')).toBeUndefined();
    loop.set({ storeTopC: 61 }).run(260);
    expect(loop.phase).toBe('resting');
    expect(loop.alarm('liner-hot')?.active).not.toBe(true);
    expect(loop.alarm('liner-not-cooled')).toMatchObject({ active: true, priority: 'urgent' });
  });

  it('that a dead pump does not cool is urgent, under the pump', () => {
    const loop = restingLoop(level).set({ panSheetC: 75, panOutletC: 74 }).run(300);
    expect(loop.state.failure.count).toBeGreaterThan(0);
    expect(loop.alarm('liner-not-cooled')).toMatchObject({ active: true, follows: expect.any(String) });
  });
});

describe('scalding', () => {
  it('is told of ten minutes after the store came to 60 °C, until it was ten minutes below 55', () => {
    const loop = emptyLoop(site).set({ storeTopC: 59.9 }).run(900);
    expect(loop.alarm('scald-caution')).toBeUndefined();
    loop.set({ storeTopC: 60 }).run(590);
    expect(loop.alarm('scald-caution')).toBeUndefined();
    loop.run(30);
    expect(loop.alarm('scald-caution')).toMatchObject({ active: true, priority: 'when-convenient' });
    loop.set({ storeTopC: 55 }).run(900);
    expect(loop.alarm('scald-caution')).toMatchObject({ active: true });
    loop.set({ storeTopC: 54.9 }).run(620);
    expect(loop.alarm('scald-caution')?.active).toBe(false);
  });
});

describe('cooling the store by night', () => {
  const warmNight = { ambientC: 25, storeBottomC: 50, storeTopC: 52 };
  const night = (settings: Partial<Settings> = { nightCooling: 1 }) =>
    at(emptyLoop(site, settings), midnight).set(warmNight);

  it('fills the pan and circulates, down to the floor, and counts the heat as lost', () => {
    const loop = night();
    loop.until('filling');
    expect(loop.why).toBe('cooling-store');
    loop.until('circulating').set({ panOutletC: 44, panSheetC: 44, panInletC: 50 }).run(600);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'cooling-store']);
    expect(loop.last.meter.total.heatLostJ).toBeGreaterThan(1e6);
    expect(loop.last.meter.total.heatHomeJ).toBe(0);
    loop.set({ storeBottomC: 45.1 }).run(20);
    expect(loop.why).toBe('cooling-store');
    loop.set({ storeBottomC: 45 }).run(120);
    expect(loop.phase).not.toBe('circulating');
  });

  it.each([
    ['it is not chosen', { nightCooling: 0 }, {}],
    ['the store is less than 5 K above the floor', { nightCooling: 1 }, { storeBottomC: 49.9 }],
    ['frost is ahead', { nightCooling: 1 }, { ambientC: 5 }],
  ] as const)('does not begin when %s', (_, settings, values) => {
    const loop = night(settings).set(values).run(600);
    expect(loop.phase).toBe('empty');
  });

  it('does not begin by day, nor without a calendar', () => {
    const day = emptyLoop(site, { nightCooling: 1 }).set(warmNight).run(600);
    expect(day.phase).toBe('empty');
    const blind = emptyLoop(site, { nightCooling: 1 });
    blind.state = { ...blind.state, sunClock: { ...blind.state.sunClock, atMs: null } };
    blind.nowMs = -1e9;
    expect(blind.set(warmNight).run(600).phase).toBe('empty');
  });

  it('goes on though the store is at its limit, but never while the pan brings heat', () => {
    const loop = night({ nightCooling: 1, stopDifferenceK: 2 }).set({ storeBottomC: 62, storeTopC: 66 });
    loop.until('circulating').set({ panOutletC: 55, panSheetC: 55 }).run(60);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'cooling-store']);
    loop.set({ panOutletC: 64, panSheetC: 64 }).run(60);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'cooling-store']);
    loop.set({ panOutletC: 64.1, panSheetC: 64.1 }).run(20);
    expect(loop.why).toBe('store-limit');
    expect(loop.last.outputs.pumpFraction).toBe(0);
  });

  it('ends with a frost, and after a restart begins anew', () => {
    const loop = night().until('circulating').set({ panOutletC: 44, panSheetC: 44 }).run(60);
    expect(loop.state.heat.cooling).toBe(true);
    loop.set({ panInletC: 3 }).run(20);
    expect([loop.state.heat.cooling, loop.why]).toEqual([false, 'frost-measured']);
    const other = night().until('circulating').set({ storeBottomC: 47 }).run(10);
    expect(other.state.heat.cooling).toBe(true);
    expect(other.step(null).state.heat.cooling).toBe(false);
  });
});
