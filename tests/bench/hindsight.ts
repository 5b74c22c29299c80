import { course } from '../../sim/course/course.ts';
import { enginePolicy } from '../../sim/course/engine-policy.ts';
import { heldAside } from '../../sim/course/held-aside.ts';
import type { Course } from '../../sim/course/place.ts';
import { runPolicy } from '../../sim/course/run-policy.ts';
import { type Run, runsOf } from '../../sim/course/runs.ts';
import { someThermostat } from '../unit/sim/course/random-policies.ts';
import { median, report } from './figure.ts';

const triedThermostats = 100;

/**
 * The engine beside a thermostat that was chosen after the day: the best for that very day and loop out of a
 * hundred with thresholds out of a hat. What foresight brings nobody can have; this is nearer to what can be had.
 */
export async function benchHindsight({ quick = false }: { quick?: boolean }): Promise<void> {
  for (const one of [course, heldAside]) benchCourse(one, quick);
}

function benchCourse(one: Course, quick: boolean): void {
  const runs = runsOf(one).filter((_, number) => !quick || number % 5 === 0);
  const ratios = runs.map(engineOverChosen);
  const figure = (name: string, value: number) =>
    report({ bench: 'hindsight', figure: `${one.name}: ${name}`, value, unit: '1' });
  figure('engine over the thermostat chosen after the day, median', median(ratios));
  figure('engine over the thermostat chosen after the day, least', Math.min(...ratios));
  figure(`runs of ${runs.length} with at least as much heat`, ratios.filter((ratio) => ratio >= 1).length);
}

function engineOverChosen(run: Run): number {
  const chosenJ = Math.max(
    ...Array.from(
      { length: triedThermostats },
      (_, number) => runPolicy(run, someThermostat(number, run.site)).harvestJ,
    ),
  );
  const ratio = runPolicy(run, enginePolicy(run)).harvestJ / chosenJ;
  console.error(`${run.name.padEnd(28)} ${ratio.toFixed(3)} of ${(chosenJ / 3.6e6).toFixed(2)} kWh`);
  return ratio;
}
