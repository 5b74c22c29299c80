import type { SweepPoint } from '../../../shared-types/tuning.ts';
import { estimateOf } from '../live-again/bands.ts';
import { frontOf } from './front.ts';
import type { Point } from './points.ts';
import type { Tried } from './trial.ts';

/**
 * Sums what the days brought, for each set of settings.
 *
 * @param tried - Of each day, the outcome under each set; the first set is the settings in force.
 */
export function sumUp(points: readonly Point[], tried: readonly (readonly Tried[])[]): SweepPoint[] {
  const sums = points.map((_, point) => sumOf(tried.map((day) => day[point] as Tried)));
  const base = sums[0] as Sum;
  const front = frontOf(
    sums.map(({ heatHomeJ, starts, fills, electricityJ }) => ({
      heatJ: heatHomeJ[0] as number,
      costs: [starts, fills, electricityJ],
    })),
  );
  return points.map(({ change }, index) => {
    const { heatHomeJ, ...rest } = sums[index] as Sum;
    return {
      change,
      heatHomeJ: estimateOf(heatHomeJ),
      heatGainJ: estimateOf(heatHomeJ.map((heat, sample) => heat - (base.heatHomeJ[sample] as number))),
      ...rest,
      onFront: front[index] as boolean,
    };
  });
}

interface Sum extends Pick<SweepPoint, 'electricityJ' | 'starts' | 'fills' | 'mostIceKg' | 'beyondLogS'> {
  readonly heatHomeJ: readonly number[];
  readonly aboveFreezingK: number | null;
  readonly belowLinerLimitK: number | null;
}

function sumOf(days: readonly Tried[]): Sum {
  const added = (of: (day: Tried) => number) => days.reduce((sum, day) => sum + of(day), 0);
  const samples = days[0]?.heatHomeJ.map((_, sample) => added((day) => day.heatHomeJ[sample] as number));
  return {
    heatHomeJ: samples ?? [],
    electricityJ: added((day) => day.electricityJ),
    starts: added((day) => day.starts),
    fills: added((day) => day.fills),
    aboveFreezingK: leastOf(days.map((day) => day.aboveFreezingK)),
    mostIceKg: Math.max(...days.map((day) => day.mostIceKg)),
    belowLinerLimitK: leastOf(days.map((day) => day.belowLinerLimitK)),
    beyondLogS: added((day) => day.beyondLogS),
  };
}

function leastOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : Math.min(...known);
}
