import type { SweepPoint, SweepReport } from '../../../../shared-types/tuning.ts';

/** What heat may be held against. */
export const costs = ['starts', 'fills', 'electricityJ'] as const;
export type Cost = (typeof costs)[number];

/** A combination in the plane of heat and one of its costs, both as they are shown. */
export interface Plotted {
  /** Place among the points of the sweep. */
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
  readonly point: SweepPoint;
}

/** From the sweep's units to those that are shown. */
export interface Scales {
  readonly heat: (valueJ: number) => number;
  readonly cost: (value: number) => number;
}

/** The points from the least cost to the greatest, of equal cost the one with less heat first. */
export function plotted(points: readonly SweepPoint[], cost: Cost, scales: Scales): readonly Plotted[] {
  return points
    .map((point, index) => ({
      index,
      point,
      x: scales.cost(point[cost]),
      y: scales.heat(point.heatGainJ.value),
      low: scales.heat(point.heatGainJ.low),
      high: scales.heat(point.heatGainJ.high),
    }))
    .sort((one, other) => one.x - other.x || one.y - other.y || one.index - other.index);
}

/** Least and most of some numbers with a margin around them, so that no mark stands on the frame. */
export function roomFor(values: readonly number[]): readonly [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  const margin = (most - least) * 0.08 || 1;
  return [least - margin, most + margin];
}

/** The place that a key leads to in a row of marks; undefined when it leads nowhere. */
export function markByKey(place: number, count: number, key: string): number | undefined {
  const last = count - 1;
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return Math.min(last, place + 1);
    case 'ArrowLeft':
    case 'ArrowDown':
      return Math.max(0, place - 1);
    case 'Home':
      return 0;
    case 'End':
      return last;
    default:
      return undefined;
  }
}

/** Rows of the table: the most heat first, the one in force before all; of the front alone where that is wanted. */
export function tableOrder(points: readonly SweepPoint[], frontOnly: boolean): readonly number[] {
  return points
    .map((_, index) => index)
    .filter((index) => index === 0 || !frontOnly || points[index]?.onFront)
    .sort((one, other) => {
      if (one === 0 || other === 0) return one - other;
      return (points[other]?.heatGainJ.value ?? 0) - (points[one]?.heatGainJ.value ?? 0) || one - other;
    });
}

/** The point that is advised; null where the advice is to leave things as they are. */
export const advisedIndex = ({ advice, points }: SweepReport): number | null =>
  advice.point > 0 && advice.point < points.length ? advice.point : null;
