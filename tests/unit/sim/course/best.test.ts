import { describe, expect, it } from 'vitest';
import { bestOf } from '../../../../sim/course/best/best.ts';
import { climb } from '../../../../sim/course/best/climb.ts';
import { clonePlant } from '../../../../sim/course/best/clone-plant.ts';
import { type Mode, modesOf } from '../../../../sim/course/best/modes.ts';
import { divided, playPlan } from '../../../../sim/course/best/schedule.ts';
import { searchBest } from '../../../../sim/course/best/search.ts';
import { skyOf } from '../../../../sim/course/best/sky.ts';
import { course } from '../../../../sim/course/course.ts';
import { enginePolicy } from '../../../../sim/course/engine-policy.ts';
import { outsideJ } from '../../../../sim/course/harvest.ts';
import { heldAside } from '../../../../sim/course/held-aside.ts';
import { pumping } from '../../../../sim/course/policy.ts';
import { runPolicy } from '../../../../sim/course/run-policy.ts';
import { type Run, runsOf } from '../../../../sim/course/runs.ts';
import { plainThermostat, thermostat } from '../../../../sim/course/thermostat.ts';
import { advance } from '../../../../sim/plant/advance.ts';
import { createPlant } from '../../../../sim/plant/state.ts';
import type { Conditions } from '../../../../sim/weather/conditions.ts';
import { blackBodyWM2 } from '../../../../sim/weather/sky.ts';
import { dullNoon, withSun } from '../../../support/plants.ts';
import { dayPolicy, restlessPolicy, someThermostat } from './random-policies.ts';

const triedDays = ['broken-july', 'frost-november'];
const tried = runsOf({ ...course, days: course.days.filter(({ name }) => triedDays.includes(name)) });
const aside = runsOf({ ...heldAside, days: heldAside.days.filter(({ name }) => name === 'front-december') });
/** Searches take seconds, on a busy machine many of them [ms]. */
const longMs = 300_000;
/** Less thorough than the bench, and a bound all the same. */
const quick = { grantFraction: 5e-4, mostLabels: 120 };

describe('the bound', () => {
  it.each([...tried, ...aside].map((run) => [run.name, run] as const))(
    'is above the engine, plain thermostats and thirty policies out of a hat: %s',
    (_, run) => {
      const best = bestOf(run, quick);
      const { site, fromMs } = run;
      const policies = [
        enginePolicy(site),
        thermostat(site, plainThermostat),
        thermostat(site, { ...plainThermostat, onK: 3, offK: 1, fillK: 4, empties: true }),
        ...Array.from({ length: 6 }, (_, number) => restlessPolicy(number)),
        ...Array.from({ length: 14 }, (_, number) => dayPolicy(100 + number, fromMs)),
        ...Array.from({ length: 10 }, (_, number) => someThermostat(200 + number, site)),
      ];
      const harvests = policies.map((policy) => runPolicy(run, policy).harvestJ);
      expect(Math.max(...harvests)).toBeLessThan(best.boundJ);
      expect(best.achievedJ).toBeLessThanOrEqual(best.boundJ);
      // What was found is worth having: nobody of these did better.
      expect(Math.max(...harvests)).toBeLessThan(best.achievedJ);
      expect(best.achievedJ).toBeGreaterThan(0.93 * best.boundJ);
    },
    longMs,
  );

  it.each(tried.slice(0, 2).map((run) => [run.name, run] as const))(
    'is above schedules found on another grid, with every switch moved: %s',
    (_, run) => {
      const best = bestOf(run, quick);
      const plant = run.plant();
      const coarse = { plant, sky: skyOf(run.weather, run.fromMs, run.toMs, 60), stepS: 60 };
      const modes = modesOf(run.site);
      const other = searchBest({ ...coarse, modes, stepsADecision: 6, ...quick });
      const plan = climb(coarse, other.plan, 2).plan;
      const fine = { plant, sky: skyOf(run.weather, run.fromMs, run.toMs, 10), stepS: 10 };
      const harvestOf = (tried: readonly Mode[]) => playPlan(fine, divided(tried, 6)) - outsideJ(plant);
      expect(harvestOf(plan)).toBeLessThan(best.boundJ);
      for (let number = 0; number < 8; number++)
        expect(harvestOf(jittered(plan, number))).toBeLessThan(best.boundJ);
    },
    longMs,
  );

  it(
    'does not fall when more is merged',
    () => {
      const [run] = tried;
      if (run === undefined) throw new Error('no run');
      const loose = bestOf(run, { grantFraction: 2e-3, mostLabels: 60 });
      const tight = bestOf(run, { grantFraction: 3e-4, mostLabels: 200 });
      expect(tight.searchJ).toBeLessThanOrEqual(loose.searchJ);
      expect(tight.achievedJ).toBeLessThan(loose.boundJ);
    },
    longMs,
  );
});

/** A plan with each of its switches some minutes earlier or later. */
function jittered(plan: readonly Mode[], number: number): Mode[] {
  return plan.map((_, minute) => {
    const off = Math.round(5 * Math.sin(number + (1 + number) * Math.floor(minute / 30)));
    return plan[Math.min(plan.length - 1, Math.max(0, minute + off))] as Mode;
  });
}

const hourMs = 3_600_000;
const cold: Conditions = { ...dullNoon, airC: 4, longWaveWM2: 0.75 * blackBodyWM2(4), windMs: 2 };
const dark = { ...withSun(0, cold), sunZenithDeg: 120 };

/** A day of one of the course's runs under a sun that is switched on and off. */
function toyRun(run: Run, shines: (hour: number) => boolean): Run {
  const at = (atMs: number): Conditions => {
    const hour = 4 + (atMs - run.fromMs) / hourMs;
    const conditions = shines(hour) ? withSun(850, cold) : dark;
    return { ...conditions, atMs, solarHour: hour % 24 };
  };
  return { ...run, weather: { at } };
}

const minuteOf = (hour: number) => Math.round((hour - 4) * 60);

describe('the search', () => {
  it.each(tried.slice(3, 6).map((run) => [run.name, run] as const))(
    'has the water out while a sun that is switched on and off shines, and home before and after: %s',
    (_, run) => {
      const { plan, boundJ, achievedJ } = bestOf(
        toyRun(run, (hour) => hour >= 9 && hour < 14),
        quick,
      );
      const between = (from: number, to: number) => new Set(plan.slice(minuteOf(from), minuteOf(to)));
      expect(between(4, 8.5)).toEqual(new Set(['empty']));
      expect(between(9.5, 13.5).has('pump')).toBe(true);
      expect(between(9.5, 13.5).has('empty')).toBe(false);
      expect(between(14.5, 28)).toEqual(new Set(['empty']));
      expect(achievedJ).toBeGreaterThan(0.98 * boundJ);
    },
    longMs,
  );

  it('leaves the pan empty when there is nothing to be had', () => {
    const [run] = tried;
    if (run === undefined) throw new Error('no run');
    const { plan, boundJ } = bestOf(
      toyRun(run, () => false),
      quick,
    );
    expect(new Set(plan)).toEqual(new Set(['empty']));
    expect(Math.abs(boundJ)).toBeLessThan(1000);
  });

  it(
    'knows that cold water is warmed by mild air, by night as well',
    () => {
      const [run] = runsOf({
        ...course,
        days: course.days.filter(({ name }) => name === 'overcast-october'),
      });
      if (run === undefined) throw new Error('no run');
      const { plan, boundJ, achievedJ } = bestOf(run, quick);
      expect(new Set(plan.slice(0, 120)).has('pump')).toBe(true);
      expect(achievedJ).toBeLessThan(boundJ);
      expect(achievedJ).toBeGreaterThan(0.97 * boundJ);
    },
    longMs,
  );

  it('finds what trying everything finds', () => {
    const [run] = tried.slice(3);
    if (run === undefined) throw new Error('no run');
    const toy = toyRun(run, (hour) => hour < 5 || (hour >= 5.5 && hour < 6));
    const plant = toy.plant();
    const sky = skyOf(toy.weather, toy.fromMs, toy.fromMs + 2.5 * hourMs, 60);
    const modes = modesOf(toy.site);
    const stepsADecision = 25;
    const task = { plant, sky, stepS: 60, modes, stepsADecision, grantFraction: 1e-5, mostLabels: 5000 };
    const { boundJ, foundJ, plan } = searchBest(task);
    const decisions = sky.length / stepsADecision;
    let most = Number.NEGATIVE_INFINITY;
    for (let code = 0; code < modes.length ** decisions; code++) {
      const tries = Array.from(
        { length: decisions },
        (_, index) => modes[Math.floor(code / modes.length ** index) % modes.length] as Mode,
      );
      most = Math.max(most, playPlan(task, divided(tries, stepsADecision)) - outsideJ(plant));
    }
    expect(foundJ / most).toBeCloseTo(1, 9);
    expect(boundJ).toBeGreaterThanOrEqual(most);
    expect(boundJ).toBeLessThan(1.001 * most);
    expect(playPlan(task, plan) - outsideJ(plant)).toBeCloseTo(foundJ, -1);
  });

  it('leaves cool water in the sun when the store is far warmer', () => {
    const [run] = tried.slice(3);
    if (run === undefined) throw new Error('no run');
    const plant = createPlant(run.site, { waterC: 60, panC: 10, panFull: true });
    const toy = toyRun(run, () => true);
    const sky = skyOf(toy.weather, toy.fromMs, toy.fromMs + hourMs, 60);
    const modes = modesOf(toy.site);
    const { plan } = searchBest({ plant, sky, stepS: 60, modes, stepsADecision: 10, ...quick });
    expect(new Set(plan)).toEqual(new Set(['rest']));
  });

  it('wins by moving switches, and counts what it won', () => {
    const [run] = tried.slice(3);
    if (run === undefined) throw new Error('no run');
    const toy = toyRun(run, (hour) => hour >= 9 && hour < 14);
    const stage = { plant: toy.plant(), sky: skyOf(toy.weather, toy.fromMs, toy.toMs, 60), stepS: 60 };
    const late = stage.sky.map((_, minute): Mode => {
      return minute >= minuteOf(9.25) && minute < minuteOf(14.25) ? 'pump' : 'empty';
    });
    const better = climb(stage, late, 4);
    const value = (plan: readonly Mode[]) => playPlan(stage, plan) - outsideJ(stage.plant);
    expect(better.broughtJ).toBeGreaterThan(value(late));
    expect(better.broughtJ).toBeCloseTo(value(better.plan), -1);
  });
});

it('lets a copy of a plant go its own way', () => {
  const [run] = tried;
  if (run === undefined) throw new Error('no run');
  const plant = run.plant();
  const before = structuredClone(plant);
  const copy = clonePlant(plant);
  expect(copy).toEqual(plant);
  for (let step = 0; step < 30; step++) advance(copy, pumping, dullNoon, 60);
  expect(plant).toEqual(before);
});

it('gives a longer step the mean of the sky over it', () => {
  const [run] = tried;
  if (run === undefined) throw new Error('no run');
  const noonMs = run.fromMs + 8 * hourMs;
  const mean = skyOf(run.weather, noonMs, noonMs + 120_000, 60);
  const parts = skyOf(run.weather, noonMs, noonMs + 120_000, 10);
  expect([mean.length, parts.length]).toEqual([2, 12]);
  const sum = (sky: readonly Conditions[]) => sky.reduce((total, { beamWM2 }) => total + beamWM2, 0);
  expect(sum(mean) * 6).toBeCloseTo(sum(parts), 6);
  expect(parts[11]).toEqual(run.weather.at(noonMs + 120_000));
});
