import { expect, it } from 'vitest';
import { defaultSettings, settingsSchema } from '../../../../shared-types/settings.ts';
import { course } from '../../../../sim/course/course.ts';
import { acquainted, enginePolicy } from '../../../../sim/course/engine-policy.ts';
import { harvestJ, outsideJ } from '../../../../sim/course/harvest.ts';
import { heldAside } from '../../../../sim/course/held-aside.ts';
import type { Course } from '../../../../sim/course/place.ts';
import { emptying, pumping } from '../../../../sim/course/policy.ts';
import { runPolicy } from '../../../../sim/course/run-policy.ts';
import { type Run, runsOf } from '../../../../sim/course/runs.ts';
import { plainThermostat, thermostat } from '../../../../sim/course/thermostat.ts';
import { createLoop } from '../../../../sim/loop.ts';
import { emptyAccount } from '../../../../sim/plant/account.ts';
import type { PlantState } from '../../../../sim/plant/state.ts';
import { waterJKgK } from '../../../../sim/plant/water.ts';

/** Some days of a course, so that not all of its loops are built. */
const onlyDays = (whole: Course, ...names: string[]): Course => ({
  ...whole,
  days: whole.days.filter(({ name }) => names.includes(name)),
});
const clearRuns = runsOf(onlyDays(course, 'clear-may'));
const runNamed = (end: string): Run => clearRuns.find(({ name }) => name.endsWith(end)) as Run;

it('has the same shape aside: three climates, three loops, at least twelve days, no seed twice', () => {
  for (const { days, shapes } of [course, heldAside]) {
    expect(days.length).toBeGreaterThanOrEqual(12);
    expect(new Set(days.map(({ place }) => place)).size).toBe(3);
    expect(shapes.map(({ kind }) => kind)).toEqual(['open-high', 'open-low', 'reservoir']);
  }
  const seeds = [course, heldAside].flatMap(({ days }) => days.map(({ seed }) => seed));
  expect(new Set(seeds).size).toBe(seeds.length);
});

it('runs the engine as the simulated loop does', () => {
  const run = runNamed('open-high');
  const plant = run.plant();
  const outsideAtFirstJ = outsideJ(plant);
  const account = emptyAccount();
  const settings = settingsSchema.parse({ ...defaultSettings, ...run.site.settings });
  const loop = createLoop({ ...run, plant, settings, state: acquainted(run, settings), account });
  for (let atMs = run.fromMs; atMs <= run.toMs; atMs += 10_000) loop.step(atMs);
  const result = runPolicy(run, enginePolicy(run));
  expect(result.harvestJ).toBe(harvestJ(account, plant, outsideAtFirstJ));
  expect(result.electricityJ).toBe(account.electricityJ);
});

/** Heat of the sheet above 0 °C [J]. */
function sheetJ({ pan, parts }: PlantState): number {
  const lane = (sheetM2: number, sheetC: readonly number[]) =>
    parts.traits.sheetJM2K * sheetM2 * sheetC.reduce((total, valueC) => total + valueC, 0);
  return lane(parts.pan.core.sheetM2, pan.core.sheetC) + lane(parts.pan.edge.sheetM2, pan.edge.sheetC);
}

it.each([
  ['open-high', 1e-9],
  ['open-low', 1e-9],
  ['reservoir', 0.03],
])('counts every joule of the loop once, wherever it ends: %s', (kind, reservoirLossFraction) => {
  const run = runNamed(kind);
  const plant = run.plant();
  const first = { outsideJ: outsideJ(plant), sheetJ: sheetJ(plant) };
  const account = emptyAccount();
  const settings = settingsSchema.parse({ ...defaultSettings, ...run.site.settings });
  const loop = createLoop({ ...run, plant, settings, state: acquainted(run, settings), account });
  for (let atMs = run.fromMs; atMs <= run.toMs; atMs += 10_000) loop.step(atMs);
  const { gainJ, pumpJ, airJ, linerJ, pipeJ, snowJ, leakedJ } = account;
  const broughtJ = gainJ + pumpJ - airJ - linerJ - pipeJ - snowJ - leakedJ - (sheetJ(plant) - first.sheetJ);
  const countedJ = harvestJ(account, plant, first.outsideJ);
  // Only a reservoir loses heat that is neither counted nor booked among these.
  expect(broughtJ / countedJ - 1).toBeGreaterThan(-1e-9);
  expect(broughtJ / countedJ - 1).toBeLessThan(reservoirLossFraction);
});

it('values water left in the pan at what it would bring home that instant', () => {
  const run = runNamed('open-high');
  const plant = run.plant();
  const account = emptyAccount();
  account.homeJ = -7 * waterJKgK * 22;
  plant.pan.core.massKg[0] = 7;
  plant.pan.core.waterC[0] = 30;
  expect(harvestJ(account, plant, 0)).toBeCloseTo(7 * waterJKgK * (30 - 22), 3);
});

it('counts fills, starts and electricity', () => {
  const run = runNamed('open-high');
  let steps = 0;
  const result = runPolicy(run, () => {
    steps++;
    // Two hours of water, an hour of draining, twice.
    return steps % 1080 < 720 && steps < 2160 ? pumping : emptying;
  });
  expect(result).toMatchObject({ fills: 2, starts: 2 });
  expect(result.electricityJ).toBeGreaterThan(0.7 * 60 * 4 * 3600);
  expect(result.electricityJ).toBeLessThan(60 * 4 * 3600);
});

it('is the same run for every policy, whatever ran before', () => {
  const run = runNamed('open-low');
  const policy = () => thermostat(run.site, plainThermostat);
  const first = runPolicy(run, policy());
  runPolicy(run, () => pumping);
  expect(runPolicy(run, policy())).toEqual(first);
});
