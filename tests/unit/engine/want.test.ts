import { describe, expect, it } from 'vitest';
import { absorbedFraction, skyLossWM2 } from '../../../controller/engine/want/collector.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import { circulatingLoop, commonSensors, emptyLoop, Loop, makeSite, restingLoop } from './rig.ts';

const hourMs = 3_600_000;
const sensors: Channel[] = [...commonSensors, 'irradianceWM2', 'windMs'];
const units = { irradianceWM2: 'W/m2', windMs: 'm/s' };
const measured = makeSite('drain-valve', commonSensors, {
  sensors: Object.fromEntries(
    sensors.map((channel) => [channel, { key: channel, unit: units[channel as keyof typeof units] ?? 'C' }]),
  ),
});
const site = makeSite('drain-valve');

/** Lets the full pan change evenly. */
function drift(loop: Loop, fromC: number, toC: number, overS: number): Loop {
  const steps = Math.round(overS / 30);
  for (let i = 1; i <= steps; i++) {
    const panC = fromC + ((toC - fromC) * i) / steps;
    loop.set({ panOutletC: panC, panSheetC: panC }).run(30);
    if (loop.phase !== 'resting' && loop.phase !== 'circulating') return loop;
  }
  return loop;
}

/** The sudden change with which the readings of a test begin is not counted for a loss. */
function settled(loop: Loop): Loop {
  loop.state = { ...loop.state, harvest: { ...loop.state.harvest, lostJ: 0, inGap: false } };
  return loop;
}

/** A loop on the first day of summer at 40 degrees north, at a solar hour. */
function at(solarHour: number, own = site): Loop {
  const loop = new Loop(own);
  loop.nowMs = Date.UTC(2031, 5, 21) + (solarHour + 2) * hourMs;
  return loop.step(null);
}

describe('what the day promises', () => {
  const promiseJ = (loop: Loop) => loop.last.belief.dayPromiseJ ?? Number.NaN;

  it('is nothing while the sun is down, and less with every hour of an afternoon', () => {
    expect(promiseJ(at(3))).toBe(0);
    expect(promiseJ(at(22))).toBe(0);
    const [noon, three, six] = [12, 15, 17].map((hour) => promiseJ(at(hour)));
    expect(noon).toBeGreaterThan(three ?? 0);
    expect(three).toBeGreaterThan(six ?? 0);
    expect(six).toBeGreaterThan(0);
  });

  it('is what a sheet takes of a sky as clear as usual, less what it loses to air and sky', () => {
    // One slice is left half an hour before a sunset at a height of about 2.5 degrees: it pays nothing.
    const loop = at(12, makeSite('drain-valve', commonSensors, { pan: { ...site.pan, grossAreaM2: 20 } }));
    const small = at(12);
    expect(promiseJ(loop) / promiseJ(small)).toBeCloseTo(20 / site.pan.grossAreaM2, 9);
    const cold = at(12).set({ ambientC: 5 }).run(70);
    // Ten kelvin more to the air cost 18.5 W/m2K over the seven hours in which the pan gains at all.
    const lostJ = promiseJ(small) - promiseJ(cold);
    expect(lostJ / (10 * 18.5 * site.pan.grossAreaM2 * 3600)).toBeGreaterThan(5);
    expect(lostJ / (10 * 18.5 * site.pan.grossAreaM2 * 3600)).toBeLessThan(6.5);
    expect([absorbedFraction, skyLossWM2]).toEqual([0.9, 60]);
  });

  it('grows with the light that was seen so far, and shrinks under clouds', () => {
    const light = (irradianceWM2: number) => at(10, measured).set({ irradianceWM2, windMs: 2 }).run(7200);
    const [dark, usual, bright] = [0, 700, 1000].map((watts) => promiseJ(light(watts)));
    expect(dark).toBeLessThan(usual ?? 0);
    expect(usual).toBeLessThan(bright ?? 0);
    expect(light(1000).state.harvest.clearFraction).toBeGreaterThan(0.95);
    expect(light(0).state.harvest.clearFraction).toBeLessThan(0.1);
  });

  it('takes the light from the dry sheet where no sensor measures it', () => {
    const hot = at(11).set({ panSheetC: 60, panOutletC: 60 });
    hot.settings.fillDifferenceK = 60;
    hot.run(7200);
    const cool = at(11).set({ panSheetC: 16, panOutletC: 16 }).run(7200);
    expect(hot.state.harvest.clearFraction).toBeGreaterThan(0.9);
    expect(cool.state.harvest.clearFraction).toBeLessThan(0.2);
  });

  it('is not known without a calendar, and the wait through a gap then is bounded by its cost alone', () => {
    const loop = new Loop(site);
    loop.nowMs = 0;
    loop.step(null);
    expect(loop.last.belief.dayPromiseJ).toBeNull();
  });
});

describe('filling pays or not', () => {
  it('not in the last light, however warm the sheet is', () => {
    const loop = at(18.95).until('empty').set({ panSheetC: 32, panOutletC: 32 }).run(120);
    expect([loop.phase, loop.why]).toEqual(['empty', 'waiting-worth-filling']);
    expect(loop.last.reasons.phase.text).toMatch(
      /^A fill would bring 0\.0\d kWh in the coming hour; it costs 0\.09 kWh\.$/,
    );
  });

  it('in the morning it does', () => {
    expect(at(8).until('empty').set({ panSheetC: 32, panOutletC: 32 }).run(120).phase).toBe('filling');
  });

  it('no more than the day may have fills', () => {
    const loop = restingLoop(site, { emptyAfterMin: 10, fillsPerDay: 1 }).until('emptying').until('empty');
    loop.set({ panOutletC: 40, panSheetC: 40 }).run(2000);
    expect([loop.phase, loop.why]).toEqual(['empty', 'waiting-fills-per-day']);
    loop.localDay = '2031-06-22';
    expect(loop.until('filling').phase).toBe('filling');
  });
});

describe('a gap in the sun', () => {
  it('is waited through while the day promises more than a refill costs, until the first wait cost half as much', () => {
    const loop = settled(restingLoop(site));
    drift(loop, 21.5, 21.3, 600);
    expect([loop.phase, loop.why]).toEqual(['resting', 'resting-through-gap']);
    drift(loop, 21.3, 15, 9000);
    expect(loop.decisions.map(({ reasons }) => reasons.phase.code)).toContain('emptying-no-gain');
    const before = loop.decisions.filter(({ phase }) => phase === 'resting').at(-1);
    expect(before?.reasons.phase.code).toBe('resting-through-gap');
    const { lostKWh = 0, costKWh = 0 } = before?.reasons.phase.values ?? {};
    expect(lostKWh / costKWh).toBeGreaterThan(0.47);
    expect(lostKWh / costKWh).toBeLessThan(0.5);
  });

  it('is waited through for longer on a day on which gaps have ended before', () => {
    const loop = settled(restingLoop(site));
    loop.state = { ...loop.state, harvest: { ...loop.state.harvest, gaps: 1 } };
    drift(loop, 21.5, 15, 9000);
    const { lostKWh = 0, costKWh = 0 } =
      loop.decisions.filter(({ phase }) => phase === 'resting').at(-1)?.reasons.phase.values ?? {};
    expect(lostKWh / costKWh).toBeGreaterThan(0.71);
    expect(lostKWh / costKWh).toBeLessThan(0.75);
  });

  it('that has ended counts, until the next day', () => {
    const loop = drift(settled(restingLoop(site)), 21.5, 21.1, 600);
    expect(loop.state.harvest.gaps).toBe(0);
    drift(loop, 21.1, 23.5, 1200);
    expect(loop.state.harvest.gaps).toBe(1);
    const { harvest } = loop.state;
    loop.state = { ...loop.state, harvest: { ...harvest, airFellFromC: 30, airCameBack: true } };
    const today = { gaps: 1, airFellFromC: 30, airCameBack: true };
    expect(loop.set({ ambientC: 15 }).step().state.harvest).toMatchObject(today);
    loop.localDay = '2031-06-22';
    const nextDay = { gaps: 0, airFellFromC: null, airCameBack: false };
    expect(loop.step().state.harvest).toMatchObject(nextDay);
  });

  it('is not waited through when the air falls, since then the weather turns', () => {
    const why = (airC: number) => {
      const loop = settled(restingLoop(site));
      loop.state = { ...loop.state, harvest: { ...loop.state.harvest, airMeanC: 20 } };
      drift(loop.set({ ambientC: airC }), 21.5, 21.3, 300);
      return [...new Set(loop.decisions.map(({ reasons }) => reasons.phase.code))];
    };
    expect(why(18)).not.toContain('emptying-no-gain');
    expect(why(16)).toContain('emptying-no-gain');
  });

  it('is waited through again when the air comes back: a thermometer in the sun swings with each cloud', () => {
    const loop = settled(restingLoop(site));
    loop.state = { ...loop.state, harvest: { ...loop.state.harvest, airMeanC: 20 } };
    // No more than a glance of shade: too short for the pan to be seen losing.
    drift(loop.set({ ambientC: 16 }), 21.5, 21.5, 60);
    drift(loop.set({ ambientC: 20 }), 21.5, 21.5, 60);
    const before = loop.decisions.length;
    drift(loop.set({ ambientC: 16 }), 21.5, 21.3, 300);
    const codes = loop.decisions.slice(before).map(({ reasons }) => reasons.phase.code);
    expect(codes).toContain('resting-through-gap');
    expect(codes).not.toContain('emptying-no-gain');
  });

  it('is not waited through in the evening', () => {
    const loop = settled(restingLoop(site));
    loop.nowMs += 11 * hourMs;
    const sunClock = { atMs: loop.nowMs, apartMs: null, apartSinceMs: 0 };
    loop.state = { ...loop.state, sunClock, harvest: { ...loop.state.harvest, lookedMs: null } };
    drift(loop, 21.5, 21.1, 900);
    expect(loop.decisions.map(({ reasons }) => reasons.phase.code)).not.toContain('resting-through-gap');
    expect(loop.decisions.map(({ phase }) => phase)).toContain('emptying');
  });

  it('lets a pan run on that would empty with its pump, and empties it once the gap has cost a refill', () => {
    const loop = settled(
      circulatingLoop(makeSite('pump-stop')).set({ panOutletC: 20.3, panSheetC: 20.3 }).run(2500),
    );
    drift(loop, 20.3, 20, 240);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'circulating-through-gap']);
    drift(loop, 20, 12, 9000);
    expect(loop.why).toBe('emptying-no-gain');
  });

  it('is over when the pan has gained back what it lost', () => {
    const loop = drift(settled(restingLoop(site)), 21.5, 21.35, 600);
    expect(loop.state.harvest.lostJ).toBeGreaterThan(0);
    drift(loop, 21.35, 23.5, 1200);
    expect(loop.state.harvest.lostJ).toBe(0);
    expect(loop.why).toBe('waiting-start-difference');
  });
});

describe('a circulation that hardly brings anything', () => {
  const at = (differenceK: number, seconds: number) => {
    const panC = 20 + differenceK;
    return circulatingLoop(makeSite('corner'), { stopDelayS: 900 })
      .set({ panOutletC: panC, panSheetC: panC, panInletC: 20 })
      .run(seconds);
  };

  it('goes on for the stop delay, and says so', () => {
    const loop = at(1.9, 600);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'waiting-stop-delay']);
    expect(loop.last.reasons.phase.values).toMatchObject({ stopDelayS: 900 });
    expect(loop.run(320).phase).toBe('resting');
  });

  it('goes on no longer than two minutes with a pan clearly colder than the store', () => {
    expect(at(-0.9, 600).phase).toBe('circulating');
    expect(at(-1.1, 110).phase).toBe('circulating');
    expect(at(-1.1, 150).phase).toBe('resting');
  });
});

describe('a pan that no sky could warm', () => {
  it('is emptied, however small a difference the sensors still show', () => {
    const loop = circulatingLoop(site, { startDifferenceK: 6 });
    loop.nowMs += 13 * hourMs;
    const sunClock = { atMs: loop.nowMs, apartMs: null, apartSinceMs: 0 };
    loop.state = { ...loop.state, sunClock, harvest: { ...loop.state.harvest, lookedMs: null } };
    loop.set({ panOutletC: 24, panSheetC: 24 }).run(300);
    expect(loop.decisions.map(({ reasons }) => reasons.phase.code)).toContain('emptying-no-gain');
  });

  it('is not judged by the sky while the difference would start the pump', () => {
    const loop = circulatingLoop(site, { startDifferenceK: 3, stopDifferenceK: 1 });
    loop.set({ panOutletC: 24, panSheetC: 24, panInletC: 20 }).run(3600);
    loop.nowMs += 12 * hourMs;
    const sunClock = { atMs: loop.nowMs, apartMs: null, apartSinceMs: 0 };
    loop.state = { ...loop.state, sunClock, harvest: { ...loop.state.harvest, lookedMs: null } };
    expect(loop.run(300).phase).toBe('circulating');
  });
});

describe('starts of a day', () => {
  it('beyond five raise the bar for the next one by half a kelvin each', () => {
    const loop = restingLoop(site);
    const started = (starts: number) => {
      const { meter } = loop.state;
      loop.state = { ...loop.state, meter: { ...meter, total: { ...meter.total, starts } } };
      return loop.step().last.reasons.phase.values['startDifferenceK'];
    };
    expect([5, 6, 8].map(started)).toEqual([6, 6.5, 7.5]);
  });
});

describe('an empty pan', () => {
  it('is judged by the mean of its sheet, not by the gap between two clouds', () => {
    const loop = emptyLoop(site).set({ panSheetC: 20, panOutletC: 20 }).run(1200);
    loop.set({ panSheetC: 50, panOutletC: 50 }).run(15);
    const { dryC } = loop.state.harvest;
    expect(dryC).toBeGreaterThan(20);
    expect(dryC).toBeLessThan(21.5);
  });
});
