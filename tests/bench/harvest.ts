import { course } from '../../sim/course/course.ts';
import { heldAside } from '../../sim/course/held-aside.ts';
import type { Course } from '../../sim/course/place.ts';
import { type Run, runsOf } from '../../sim/course/runs.ts';
import { engineWins, runners, shareOfBest, type Verdict, verdictOf } from '../../sim/course/verdict.ts';
import { headText, verdictText } from '../../sim/course/verdict-text.ts';
import { median, report } from './figure.ts';

/** The engine over the harvest course, beside plain thermostats and the best that anybody could do. */
export async function benchHarvest({ quick = false }: { quick?: boolean }): Promise<void> {
  for (const one of [course, heldAside]) benchCourse(one, quick);
}

function benchCourse(one: Course, quick: boolean): void {
  const all = runsOf(one);
  const runs = quick ? all.filter((_, number) => isQuick(number, one)) : all;
  console.error(`${one.name}: ${runs.length} runs`);
  console.error(headText());
  const verdicts = runs.map(judge);
  const shares = verdicts.map((verdict) => shareOfBest(verdict, 'engine'));
  const engine = verdicts.map(({ results }) => results.engine);
  const figure = (name: string, value: number, held: { atLeast?: number; atMost?: number } = {}) =>
    report({ bench: 'harvest', figure: `${one.name}: ${name}`, value, unit: '1', ...held });
  figure('median share of the best', median(shares), { atLeast: 0.97 });
  figure('worst share of the best', Math.min(...shares), { atLeast: 0.92 });
  figure('most fills a day', Math.max(...engine.map(({ fills }) => fills)), { atMost: 4 });
  figure('most starts a day', Math.max(...engine.map(({ starts }) => starts)), { atMost: 10 });
  const won = verdicts.filter(engineWins).length;
  figure(`runs of ${runs.length} with more than either thermostat`, won, { atLeast: runs.length });
  const { boundJ, achievedJ } = worstBracket(verdicts);
  figure('widest gap between best achieved and bound, over the bound', 1 - achievedJ / boundJ);
}

/** A third of the runs: each day with one loop, the loops in turn. */
function isQuick(number: number, { shapes }: Course): boolean {
  const day = Math.floor(number / shapes.length);
  return number % shapes.length === day % shapes.length;
}

function worstBracket(verdicts: readonly Verdict[]): Verdict['best'] {
  const gap = ({ boundJ, achievedJ }: Verdict['best']) => 1 - achievedJ / boundJ;
  return verdicts.map(({ best }) => best).reduce((worst, best) => (gap(best) > gap(worst) ? best : worst));
}

function judge(run: Run): Verdict {
  const verdict = verdictOf(run);
  console.error(verdictText(verdict));
  console.log(JSON.stringify(lineOf(verdict)));
  return verdict;
}

const rounded = (value: number) => Number(value.toPrecision(4));

function lineOf(verdict: Verdict) {
  const { run, results, best } = verdict;
  const made = runners.map((runner) => {
    const { harvestJ, fills, starts, electricityJ } = results[runner];
    const share = rounded(shareOfBest(verdict, runner));
    return [
      runner,
      { harvestKWh: rounded(harvestJ / 3.6e6), share, fills, starts, pumpWh: rounded(electricityJ / 3600) },
    ];
  });
  const { boundJ, achievedJ } = best;
  return {
    bench: 'harvest',
    run,
    ...Object.fromEntries(made),
    bestBoundKWh: rounded(boundJ / 3.6e6),
    bestAchievedKWh: rounded(achievedJ / 3.6e6),
  };
}
