import { describe, expect, it } from 'vitest';
import { comesHomeFraction } from '../../../controller/engine/hazards/heat.ts';
import { settingsRemarks } from '../../../controller/engine/remarks.ts';
import { defaultSettings, type Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import {
  allSensors,
  circulatingLoop,
  commonSensors,
  emptyLoop,
  type Loop,
  makeSite,
  restingLoop,
} from './rig.ts';

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

  it.each([
    [
      'is not fitted',
      makeSite(
        'drain-valve',
        commonSensors.filter((channel) => channel !== 'storeTopC'),
      ),
      25,
    ],
    ['failed', site, { value: null, ageMs: 100, fault: 'open-circuit' }],
  ] as const)('is as hot as what returns where its top sensor %s', (_, own, storeTopC) => {
    const loop = circulatingLoop(own).run(60).set({ storeBottomC: 50, storeTopC });
    loop.set({ panOutletC: 59.9, panSheetC: 59.9 }).run(20);
    expect(loop.phase).toBe('circulating');
    loop.set({ panOutletC: 60, panSheetC: 60 }).run(20);
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
    [
      'rests while it is hotter than the store',
      { emptyWhenStoreFull: 1 },
      tough,
      { panOutletC: 61.1 },
      'resting',
    ],
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
  it('is said to be hot near its limit, and urgently so at its limit where no water moves', () => {
    const loop = restingLoop(site).set({ panSheetC: 85 }).run(300);
    expect(loop.phase).toBe('circulating');
    expect(loop.alarm('liner-hot')).toMatchObject({ active: true, priority: 'soon' });
    expect(loop.alarm('liner-not-cooled')).toBeUndefined();
    loop.set({ storeTopC: 61, panSheetC: 79.9 }).run(300);
    expect([loop.phase, loop.alarm('liner-not-cooled')]).toEqual(['resting', undefined]);
    loop.set({ panSheetC: 80 }).run(140);
    expect(loop.alarm('liner-not-cooled')).toMatchObject({ active: true, priority: 'urgent' });
    expect(loop.alarm('liner-hot')).toMatchObject({ active: true, follows: 'liner-not-cooled' });
    loop.set({ panSheetC: 77 }).run(600);
    expect(loop.alarm('liner-not-cooled')).toMatchObject({ active: true });
    loop.set({ panSheetC: 76.9 }).run(600);
    expect(loop.alarm('liner-not-cooled')?.active).not.toBe(true);
  });

  it('that a dead pump does not cool is urgent, under the pump', () => {
    const loop = restingLoop(level).set({ panSheetC: 85, panOutletC: 84 }).run(300);
    expect(loop.state.failure.count).toBeGreaterThan(0);
    expect(loop.alarm('liner-not-cooled')).toMatchObject({ active: true, follows: expect.any(String) });
  });
});

describe('remarks on a site', () => {
  const codes = (own: Site, settings: Partial<Settings> = {}) =>
    settingsRemarks(own, { ...defaultSettings, ...settings }, {}).map(({ code }) => code);
  const withLiner = (linerLimitC: number, waterDepthM = 0.04) =>
    makeSite('drain-valve', undefined, {
      pan: { grossAreaM2: 10, wettedAreaM2: 10, waterDepthM, linerLimitC },
    });

  it.each([
    [93, false, false],
    [92, true, false],
    [83, true, false],
    [82, true, true],
  ])('of a liner that stands %d °C: dry %s, full %s', (limitC, dry, wet) => {
    const said = codes(withLiner(limitC));
    expect(said.includes('liner-not-for-dry-sheet')).toBe(dry);
    expect(said.includes('liner-not-for-still-water')).toBe(wet);
  });

  it.each([
    [60.1, true, false],
    [60, false, false],
    [59.9, false, true],
  ])('of a store that may come to %d °C: scalds %s, grows legionella %s', (storeLimitC, scalds, grows) => {
    const said = codes(withLiner(110), { storeLimitC });
    expect(said.includes('store-scalds')).toBe(scalds);
    expect(said.includes('store-grows-legionella')).toBe(grows);
  });

  it('of a pan that cannot be emptied, in whole sentences with their numbers', () => {
    expect(codes(makeSite('corner'))).toContain('warm-season-only');
    expect(codes(site)).not.toContain('warm-season-only');
    const hot = settingsRemarks(makeSite('corner'), { ...defaultSettings, storeLimitC: 75 }, {});
    for (const { text } of hot) expect(text).toMatch(/^[A-Z][^?]*\.$/);
    expect(hot.find(({ code }) => code === 'liner-not-for-dry-sheet')?.text).toContain('reaches 92 °C');
    const cool = settingsRemarks(withLiner(80), { ...defaultSettings, storeLimitC: 55 }, {});
    for (const { text } of cool) expect(text).toMatch(/^[A-Z][^?]*\.$/);
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
    expect([loop.phase, loop.state.heat.cooling]).toEqual(['empty', false]);
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
