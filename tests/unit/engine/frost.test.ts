import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../shared-types/channels.ts';
import type { RawReading } from '../../../shared-types/readings.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import {
  allSensors,
  circulatingLoop,
  commonSensors,
  emptyLoop,
  Loop,
  makeSite,
  restingLoop,
  type Values,
} from './rig.ts';

const weatherSensors: readonly Channel[] = ['irradianceWM2', 'windMs', 'humidityFraction', 'longWaveWM2'];
const units: Partial<Record<Channel, string>> = {
  flowLMin: 'L/min',
  panLevelMm: 'mm',
  pumpPowerW: 'W',
  irradianceWM2: 'W/m2',
  windMs: 'm/s',
  humidityFraction: 'fraction',
  longWaveWM2: 'W/m2',
};
const broken: RawReading = { value: null, ageMs: 100, fault: 'open-circuit' };

/** A loop that can be emptied, with some weather sensors; `changes` may make it another. */
function weatherSite(weather: readonly Channel[] = weatherSensors, changes: object = {}) {
  const sensors = Object.fromEntries(
    [...commonSensors, ...weather].map((channel) => [channel, { key: channel, unit: units[channel] ?? 'C' }]),
  );
  return makeSite('drain-valve', commonSensors, { sensors: sensorsOf(sensors), ...changes });
}

// The longwave unit shares W/m2 with the sun's; both convert into the same inner unit.
const sensorsOf = (sensors: object) => sensors;

/** Moves calendar and sun to an instant, as time that passed unnoticed by everything else. */
function at(loop: Loop, nowMs: number): Loop {
  loop.nowMs = nowMs;
  loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: nowMs } };
  return loop;
}

const midnight = Date.UTC(2031, 5, 22, 2);
const noon = Date.UTC(2031, 5, 22, 14);

/** Lets the full pan rest by an operator's wish, so that nothing but a protection ends it. */
function held(site = makeSite('drain-valve'), settings: Partial<Settings> = {}): Loop {
  const loop = restingLoop(site, settings);
  loop.ask({ kind: 'rest', minutes: 1440 });
  return loop;
}

/** Lets the pan fall steadily from 12 °C. @returns the temperature at which the loop left its rest, or null. */
function fallsTo(loop: Loop, fallKS: number, downToC = 4.1): number | null {
  for (let panC = 12; panC > downToC; panC -= fallKS * 10) {
    loop.set({ panOutletC: panC, panSheetC: panC }).step(10);
    if (loop.phase !== 'resting') return panC;
  }
  return null;
}

describe('a pan that falls towards frost', () => {
  it('is emptied when it would be at 1 °C within twice its drain time', () => {
    const loop = held(undefined, { drainTimeS: 900 }).set({ ambientC: -20 });
    const leftC = fallsTo(loop, 0.003);
    // At 0.003 K/s 1800 s are 5.4 K above 1 °C; the trend lags and is a little behind.
    expect(leftC).toBeGreaterThan(6.1);
    expect(leftC).toBeLessThan(6.5);
    expect(loop.why).toBe('frost-trend');
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
    expect(loop.last.reasons.phase.text).toMatch(
      /falls by 1\d\.\d K an hour; it would be at 1 °C in (29|30) min/,
    );
  });

  it('is left alone when it falls slower, or empties faster', () => {
    expect(fallsTo(held(undefined, { drainTimeS: 900 }).set({ ambientC: -20 }), 0.0015)).toBeNull();
    expect(fallsTo(held(undefined, { drainTimeS: 450 }).set({ ambientC: -20 }), 0.003)).toBeNull();
  });

  it('is no frost where the air is too warm for such a fall: cold water came in', () => {
    expect(fallsTo(held(undefined, { drainTimeS: 900 }).set({ ambientC: 12 }), 0.003)).toBeNull();
    expect(fallsTo(held(undefined, { drainTimeS: 900 }).set({ ambientC: 0 }), 0.003)).not.toBeNull();
  });

  it('is one where no air sensor tells how fast it may fall', () => {
    expect(fallsTo(held(undefined, { drainTimeS: 900 }).set({ ambientC: broken }), 0.003)).not.toBeNull();
  });

  it('is no frost when cold water comes in for some minutes, and then no more', () => {
    const loop = held(undefined, { drainTimeS: 900 }).set({ ambientC: -20 }).run(200);
    for (let panC = 20; panC > 8; panC -= 0.4) loop.set({ panOutletC: panC, panSheetC: panC }).step(10);
    expect(loop.run(1800).phase).toBe('resting');
  });

  it('is not emptied for the noise of its sensors', () => {
    const loop = held(undefined, { drainTimeS: 900 }).set({ ambientC: -20 });
    loop.set({ panOutletC: 7, panSheetC: 7 }).run(600);
    for (let i = 0; i < 400; i++) {
      const panC = 7 + 0.25 * ((i % 3) - 1);
      loop.set({ panOutletC: panC, panSheetC: panC }).step(10);
    }
    expect(loop.phase).toBe('resting');
  });

  it('waits for the release like after any frost', () => {
    const loop = held(undefined, { drainTimeS: 900, frostReleaseMin: 10 }).set({ ambientC: -20 });
    expect(fallsTo(loop, 0.003)).not.toBeNull();
    loop.set({ panOutletC: 6.9, panSheetC: 6.9 }).until('empty').run(60);
    expect([loop.phase, loop.why]).toEqual(['empty', 'frost-waiting-release']);
    expect(loop.state.frost.latched).toBe('frost-trend');
  });

  it('is only said of a pan that can be emptied and is full', () => {
    expect(fallsTo(held(makeSite('corner'), { drainTimeS: 900 }).set({ ambientC: -20 }), 0.003)).toBeNull();
    const empty = emptyLoop(makeSite('drain-valve'), { drainTimeS: 900 }).set({ ambientC: -20 });
    for (let panC = 12; panC > 4.1; panC -= 0.05) empty.set({ panOutletC: panC, panSheetC: panC }).step(10);
    expect(empty.state.frost.latched).toBeNull();
  });

  it('stays a measured frost once one was measured', () => {
    const loop = held(undefined, { drainTimeS: 900 }).set({ ambientC: -20 });
    loop.set({ panOutletC: 4, panSheetC: 4 }).run(10).set({ panOutletC: 4.1, panSheetC: 4.1 }).run(5);
    expect(loop.state.frost.latched).toBe('frost-measured');
  });
});

describe('a night of frost ahead', () => {
  const night = (values: Values, site = weatherSite(), settings: Partial<Settings> = {}) =>
    at(held(site, settings), midnight)
      .set({ irradianceWM2: 0, windMs: 1, humidityFraction: 0.6, longWaveWM2: broken, ...values })
      .run(10);

  it('empties a full pan that would not outlast it, whatever an operator wants', () => {
    const loop = night({ ambientC: 3 });
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-predicted']);
    expect(loop.last.reasons.phase.text).toMatch(/falls to -\d\.\d °C; .* at 2\.0 °C or below/);
    expect(loop.ask({ kind: 'run-pump', minutes: 5 })).toMatchObject({ code: 'hazard-forbids' });
  });

  it('lets nothing be filled', () => {
    const loop = at(emptyLoop(weatherSite()), midnight);
    loop.set({ irradianceWM2: 0, windMs: 1, humidityFraction: 0.6, longWaveWM2: broken, ambientC: 3 });
    loop.set({ panOutletC: 40, panSheetC: 40 }).run(600);
    expect([loop.phase, loop.why]).toEqual(['empty', 'frost-predicted']);
  });

  it('leaves a warm pan alone in a mild evening', () => {
    const loop = night({ ambientC: 9, panOutletC: 45, panSheetC: 45, panInletC: 45, storeBottomC: 44 });
    expect(loop.state.frost.nightC).not.toBeNull();
    expect(loop.phase).toBe('resting');
  });

  it('empties a pan as warm when one of its sensors is doubtful', () => {
    const loop = night({ ambientC: 9, panOutletC: 45, panSheetC: 45, panInletC: 45, storeBottomC: 44 });
    loop.set({ panInletC: { value: null, ageMs: 0 } }).step(1);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-predicted']);
  });

  it.each([
    ['the sky is warm', { longWaveWM2: 340 }],
    ['the wind keeps the sheet near the air', { windMs: 9 }],
    ['the air is damp and warmer', { ambientC: 14, humidityFraction: 0.95 }],
  ] as const)('is none when %s', (_, values) => {
    expect(night({ ambientC: 6, ...values }).state.frost.nightC).toBeNull();
  });

  it.each(['windMs', 'humidityFraction', 'longWaveWM2'] as const)(
    'counts %s as what cools most while it cannot be read',
    (channel) => {
      const windy = { ambientC: 8, windMs: 6, humidityFraction: 0.9, longWaveWM2: 340 };
      const values = channel === 'humidityFraction' ? { ...windy, ambientC: 11, windMs: 1 } : windy;
      const all = night(values).state.frost.nightC;
      expect(all).toBeNull();
      const damp = { ...values, longWaveWM2: broken };
      const without = night({ ...damp, [channel]: broken }).state.frost.nightC;
      const withIt = night(damp).state.frost.nightC;
      expect(withIt).toBeNull();
      if (channel === 'longWaveWM2') expect(without).toBeNull();
      else expect(without).toBeLessThanOrEqual(2);
    },
  );

  it('begins at the set temperature and ends 1 K above it', () => {
    const site = weatherSite(['windMs', 'humidityFraction']);
    const loop = night({ ambientC: 20 }, site);
    const seen: [number, number | null][] = [];
    for (let airC = 12; airC > 4; airC -= 0.05) {
      loop.set({ ambientC: airC }).step(20);
      seen.push([airC, loop.state.frost.nightC]);
    }
    const first = seen.find(([, nightC]) => nightC !== null);
    expect(first?.[1]).toBeCloseTo(2, 0.2);
    expect(first?.[1]).toBeLessThanOrEqual(2);
    for (let airC = 4; airC < 12; airC += 0.05) {
      loop.set({ ambientC: airC }).step(20);
      if (loop.state.frost.nightC === null) break;
      expect(loop.state.frost.nightC).toBeLessThanOrEqual(3);
      seen.push([airC, loop.state.frost.nightC]);
    }
    expect(seen.at(-1)?.[1]).toBeGreaterThan(2.7);
  });

  it('is judged cold where the air cannot be read and frost is possible', () => {
    expect(night({ ambientC: broken }).state.frost.nightC).toBeLessThan(-5);
    const summer = weatherSite(weatherSensors, { frostSeason: { from: '10-01', to: '04-30' } });
    expect(night({ ambientC: broken }, summer).state.frost.nightC).toBeNull();
    expect(night({ ambientC: 3 }, summer).state.frost.nightC).toBeLessThan(2);
  });

  it('counts a doubtful air reading only where it is the colder', () => {
    const loop = night({ ambientC: 20 });
    loop.set({ ambientC: { value: null, ageMs: 0 } }).step(1);
    expect(loop.last.belief.readings.ambientC?.quality).toBe('doubtful');
    expect(loop.state.frost.nightC).toBeLessThan(-5);
  });

  it('is over by day, and begins when a sun sensor is dark', () => {
    const loop = at(held(weatherSite()), noon).set({ windMs: 1, humidityFraction: 0.6, longWaveWM2: broken });
    loop.set({ irradianceWM2: 6, ambientC: 3 }).run(10);
    expect(loop.state.frost.nightC).toBeNull();
    loop.set({ irradianceWM2: 5 }).run(10);
    expect(loop.state.frost.nightC).not.toBeNull();
  });

  it('does not rest a pan that cannot be emptied, nor lets an empty one be filled', () => {
    const corner = makeSite('corner', allSensors, { frostSeason: { from: '10-01', to: '04-30' } });
    const full = at(restingLoop(corner), midnight).set({ ambientC: 3, panLevelMm: 40 }).run(10);
    expect(full.why).not.toBe('frost-predicted');
    const empty = at(new Loop(corner).set({ panLevelMm: 0 }).step(null), midnight).set({ ambientC: 3 });
    expect(empty.run(10).why).toBe('frost-predicted');
  });
});

describe('a night without a calendar', () => {
  function blindClock(site = weatherSite()): Loop {
    const loop = emptyLoop(site, { frostReleaseMin: 10 });
    loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: null } };
    loop.nowMs = -1e9;
    return loop.set({ ambientC: 3, windMs: 1, humidityFraction: 0.6, longWaveWM2: broken });
  }

  it('is told by a sun sensor', () => {
    const loop = blindClock().set({ irradianceWM2: 6, panOutletC: 6, panSheetC: 6, panInletC: 6 }).run(20);
    expect(loop.state.frost.nightC).toBeNull();
    loop.set({ irradianceWM2: 5 }).run(20);
    expect(loop.state.frost.nightC).not.toBeNull();
  });

  it('is taken for granted without one, but for a dry sheet 5 K warmer than the air', () => {
    const loop = blindClock(weatherSite(['windMs', 'humidityFraction'])).set({
      panOutletC: 7.9,
      panSheetC: 7.9,
      panInletC: 7.9,
    });
    loop.run(20);
    expect(loop.state.frost.nightC).not.toBeNull();
    loop.set({ panOutletC: 8, panSheetC: 8, panInletC: 8 }).run(20);
    expect(loop.state.frost.nightC).toBeNull();
  });

  it('empties a full pan only when it would soon be at frost', () => {
    const site = weatherSite(['windMs', 'humidityFraction']);
    const loop = held(site);
    loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: null } };
    loop.nowMs = -1e9;
    loop.set({ ambientC: 3, windMs: 1, humidityFraction: 0.6, panOutletC: 15, panSheetC: 15, panInletC: 15 });
    expect(loop.run(60).phase).toBe('resting');
    loop.set({ panOutletC: 5, panSheetC: 5, panInletC: 5 }).run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-predicted']);
  });
});

describe('the release after frost', () => {
  const warm = { panOutletC: 20, panSheetC: 20, panInletC: 20, ambientC: 18 };

  function frozen(site = weatherSite(), settings: Partial<Settings> = {}): Loop {
    const loop = emptyLoop(site, { frostReleaseMin: 10, ...settings });
    loop.set({ windMs: 5, humidityFraction: 0.9, longWaveWM2: broken, irradianceWM2: 100 });
    return loop.set({ panInletC: 3 }).run(20).set(warm);
  }

  it('comes by day after its time to the second', () => {
    const loop = frozen().run(600);
    expect(loop.state.frost.latched).toBe('frost-measured');
    loop.run(10);
    expect(loop.state.frost.latched).toBeNull();
  });

  it('does not come by night, nor under a dark sun sensor', () => {
    expect(at(frozen(), midnight).run(3600).state.frost.latched).toBe('frost-measured');
    expect(frozen().set({ irradianceWM2: 4, panSheetC: 20 }).run(3600).state.frost.latched).not.toBe(
      undefined,
    );
  });

  it('waits while the sun sensor is dark and the sheet no warmer than the air', () => {
    expect(frozen().set({ irradianceWM2: 4, ambientC: 20 }).run(3600).state.frost.latched).toBe(
      'frost-measured',
    );
  });

  it('comes without a calendar, where nothing tells day from night', () => {
    const loop = frozen(weatherSite(['windMs', 'humidityFraction']));
    loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: null } };
    loop.nowMs = -1e9;
    expect(loop.run(620).state.frost.latched).toBeNull();
  });

  it('waits without a calendar for a sun sensor that shows light, and not for one that failed', () => {
    const loop = frozen().set({ ambientC: 20 });
    loop.state = { ...loop.state, sunClock: { ...loop.state.sunClock, atMs: null } };
    loop.nowMs = -1e9;
    loop.set({ irradianceWM2: 0 }).run(3600);
    expect(loop.state.frost.latched).toBe('frost-measured');
    loop.set({ irradianceWM2: broken }).run(620);
    expect(loop.state.frost.latched).toBeNull();
  });
});

describe('a pan that cannot be emptied, and the season', () => {
  const seasonSite = makeSite('corner', undefined, { frostSeason: { from: '10-01', to: '03-31' } });
  const hot = { panSheetC: 40, panOutletC: 40 };

  const on = (day: string, site = seasonSite) => {
    const loop = new Loop(site).set(hot);
    loop.localDay = day;
    return loop.step(null).run(1500);
  };

  it.each([
    ['2031-09-02', undefined],
    ['2031-09-03', true],
    ['2031-09-30', true],
    ['2031-10-01', true],
    ['2032-03-31', true],
    ['2032-04-01', undefined],
  ])('on %s tells that frost is near: %s', (day, active) => {
    expect(on(day).alarm('frost-season-near')?.active).toBe(active);
  });

  it('tells in how many days', () => {
    expect(on('2031-09-03').alarm('frost-season-near')?.text).toContain('It begins in 28 days.');
    expect(on('2031-10-01').alarm('frost-season-near')?.text).not.toContain('days.');
    expect(on('2032-02-29').alarm('frost-season-near')).toBeDefined();
  });

  it.each([
    ['2031-09-30', 'filling'],
    ['2031-10-01', 'frost-season'],
    ['2032-03-31', 'frost-season'],
    ['2032-04-01', 'filling'],
  ])('on %s: %s', (day, expected) => {
    const loop = on(day);
    const filled = loop.decisions.some((decision) => decision.phase === 'filling');
    expect(filled ? 'filling' : loop.why).toBe(expected);
    if (!filled) expect(loop.ask({ kind: 'run-pump', minutes: 5 })).toMatchObject({ code: 'hazard-forbids' });
  });

  it('is silent where the pan is measured to be empty, or can be emptied', () => {
    const level = makeSite('corner', allSensors, { frostSeason: { from: '10-01', to: '03-31' } });
    const empty = new Loop(level).set({ panLevelMm: 0, flowLMin: 0 });
    empty.localDay = '2031-12-01';
    expect(empty.step(null).run(1500).alarm('frost-season-near')).toBeUndefined();
    const valve = makeSite('drain-valve', undefined, { frostSeason: { from: '10-01', to: '03-31' } });
    expect(on('2031-12-01', valve).alarm('frost-season-near')).toBeUndefined();
  });

  it.each([
    [8.1, undefined, false],
    [8, true, false],
    [4.1, true, false],
    [4, true, true],
  ])('without a season goes by the coldest night of a week: %d °C', (lowC, near, refuses) => {
    const loop = new Loop(makeSite('corner')).set({ ambientC: lowC });
    loop.step(null).run(60).set({ ambientC: 15 }).run(20);
    loop.localDay = '2031-06-22';
    loop.set(hot).run(1500);
    expect(loop.alarm('frost-season-near')?.active).toBe(near);
    expect(loop.decisions.some(({ reasons }) => reasons.phase.code === 'frost-season')).toBe(refuses);
  });

  it('takes a person at their word that it was emptied by hand, and keeps to it', () => {
    const loop = on('2031-12-01');
    expect(loop.alarm('frost-season-near')?.active).toBe(true);
    expect(loop.ask({ kind: 'empty' })).toMatchObject({ accepted: true });
    expect(loop.ask({ kind: 'empty' })).toMatchObject({ code: 'nothing-to-do' });
    loop.set({ panSheetC: 3, panOutletC: 3 }).run(1500);
    expect([loop.phase, loop.why]).toEqual(['resting', 'frost-measured']);
    expect(loop.alarm('frost-season-near')?.active).not.toBe(true);
    loop.step(null).run(600);
    expect([loop.phase, loop.last.belief.water]).toEqual(['resting', 'empty']);
    loop.localDay = '2032-05-01';
    loop.set(hot).until('filling', 4000);
  });

  it('does not while the pan is kept warm, or the pump runs', () => {
    const loop = on('2031-12-01').set({ panSheetC: 3, panOutletC: 3 }).run(20);
    expect([loop.last.outputs.pumpFraction, loop.why]).toEqual([1, 'frost-measured']);
    expect(loop.ask({ kind: 'empty' })).toMatchObject({ code: 'hazard-forbids' });
    const running = circulatingLoop(makeSite('corner'));
    expect(running.ask({ kind: 'empty' })).toMatchObject({ code: 'not-possible-here' });
  });

  it('forgets a cold night after a week, and keeps no lows where nothing asks for them', () => {
    const loop = new Loop(makeSite('corner')).set({ ambientC: 2 }).step(null).run(60);
    loop.set({ ambientC: 15 }).run(20);
    for (let day = 22; day <= 28; day++) {
      loop.localDay = `2031-06-${day}`;
      loop.run(20);
      expect(loop.why).toBe('frost-season');
    }
    loop.localDay = '2031-06-29';
    loop.run(20);
    expect(loop.why).not.toBe('frost-season');
    expect(loop.state.airLows).toEqual({ todayC: 15, daysC: Array(7).fill(15) });
    expect(on('2031-12-01').state.airLows).toEqual({ todayC: null, daysC: [] });
  });

  it('keeps the days that it knows over days without an air sensor', () => {
    const loop = new Loop(makeSite('corner'))
      .set({ ambientC: 2 })
      .step(null)
      .run(60)
      .set({ ambientC: broken });
    loop.localDay = '2031-06-22';
    loop.run(60);
    loop.localDay = '2031-06-23';
    loop.run(60);
    expect(loop.state.airLows).toEqual({ todayC: null, daysC: [2] });
  });
});
