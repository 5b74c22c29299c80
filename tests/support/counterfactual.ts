import type { LoopFit } from '../../shared-types/tuning.ts';
import { fitLoop } from '../../sim/identify/fit-loop.ts';
import { readSpan } from '../../sim/identify/world/span.ts';
import { compareDay } from '../../sim/replay/live-again/compare-day.ts';
import type { CounterfactualCase, SensorSet } from './counterfactual-cases.ts';

export interface CounterfactualResult {
  /** Error of the predicted heat, as a share of the true heat. */
  readonly errorFraction: number;
  /** True of a day on which so little came home that a share of it says nothing. */
  readonly poor: boolean;
  /** Whether the settings that truly bring more were told; null where they bring nearly the same. */
  readonly rightOne: boolean | null;
  /** Whether the band of the gain leaves no doubt which settings bring more. */
  readonly sure: boolean;
  /** Whether the band holds the true heat. */
  readonly covered: boolean;
  readonly text: string;
}

/** Below this a day's heat counts as poor [J/m2 of pan]; a design choice. */
const poorJM2 = 0.5 * 3.6e6;
/** Settings whose heat differs by more than this can be told apart. */
const tellingFraction = 0.03;

const kWh = (joules: number) => (joules / 3.6e6).toFixed(2).padStart(7);

/** Predicts the last day under the tried settings with what is known of the loop. @param samples - Loops drawn for its band. */
export function counterfactualOf(
  one: CounterfactualCase,
  fit: LoopFit | null,
  samples: number,
): CounterfactualResult {
  const { logged, site, settings, tried } = one;
  const day = logged.days.at(-1) as string;
  const comparison = compareDay(logged.reader, day, tried, { fit, samples, seed: 7 });
  if (comparison === undefined) throw new Error('nobody gave it up');
  const [trueBaseJ, trueTriedJ] = [logged.trueHomeJ(settings), logged.trueHomeJ(tried)];
  const { value, low, high } = comparison.tried.heatHomeJ;
  const gainJ = comparison.heatGainJ.value;
  const sure = comparison.heatGainJ.low > 0 || comparison.heatGainJ.high < 0;
  const differs = Math.abs(trueTriedJ - trueBaseJ) > tellingFraction * Math.max(trueTriedJ, trueBaseJ);
  const rightOne = differs ? gainJ > 0 === trueTriedJ > trueBaseJ : null;
  const errorFraction = (value - trueTriedJ) / Math.abs(trueTriedJ);
  const covered = low <= trueTriedJ && trueTriedJ <= high;
  const told =
    `${one.name.padEnd(22)} then ${kWh(comparison.base.heatHomeJ.value)} true ${kWh(trueBaseJ)}` +
    ` | tried ${kWh(value)} true ${kWh(trueTriedJ)} ${trueTriedJ === 0 ? '' : `${(100 * errorFraction).toFixed(1).padStart(7)} %`}`;
  return {
    errorFraction,
    poor: trueTriedJ < poorJM2 * site.pan.wettedAreaM2,
    rightOne,
    sure,
    covered,
    text: `${told}${rightOne === false ? ` wrong one${sure ? '' : ', in doubt'}` : ''}${covered ? '' : ' outside its band'}${fit === null ? ' not fitted' : ''}`,
  };
}

/**
 * The loop as the days before the last tell it; null when they tell nothing. The first is left out: on it the controller
 * does not know the loop yet.
 */
export function fitOfDaysBefore({ logged }: CounterfactualCase): LoopFit | null {
  const spans = logged.days.slice(1, -1).flatMap((day) => {
    const read = readSpan(logged.reader, day);
    return read.ok ? [read.span] : [];
  });
  const fit = fitLoop(spans);
  return fit.converged ? fit : null;
}

const bounds = {
  full: { median: 0.03, ninetieth: 0.08 },
  least: { median: 0.06, ninetieth: 0.15 },
} as const;
const leastRight = 0.95;

/** What the results say, against the bounds that they are to keep. Poor days count for the choice alone. */
export function summaryOf(set: SensorSet, results: readonly CounterfactualResult[]) {
  const errors = results
    .filter(({ poor }) => !poor)
    .map(({ errorFraction }) => Math.abs(errorFraction))
    .toSorted((a, b) => a - b);
  const at = (share: number) => errors[Math.min(errors.length - 1, Math.floor(share * errors.length))] ?? 0;
  const chosen = results.flatMap(({ rightOne }) => (rightOne === null ? [] : [rightOne]));
  const right = chosen.filter(Boolean).length;
  const surely = results.filter(({ rightOne, sure }) => rightOne !== null && sure);
  const surelyRight = surely.filter(({ rightOne }) => rightOne === true).length;
  const { median, ninetieth } = bounds[set];
  const held = results.filter(({ covered }) => covered).length;
  const percent = (fraction: number) => `${(100 * fraction).toFixed(1)} %`;
  return {
    holds: at(0.5) <= median && at(0.9) <= ninetieth && right >= leastRight * chosen.length,
    text:
      `${set} sensors, ${results.length} days, ${errors.length} of them with heat to speak of: ` +
      `median error ${percent(at(0.5))} (wanted ${percent(median)}), ` +
      `90th percentile ${percent(at(0.9))} (wanted ${percent(ninetieth)}), ` +
      `better settings told in ${right} of ${chosen.length}, ` +
      `where the band leaves no doubt in ${surelyRight} of ${surely.length}, true heat within its band in ${held} of ${results.length}`,
  };
}
