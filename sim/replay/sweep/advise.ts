import type { SweepPoint, SweepReport } from '../../../shared-types/tuning.ts';
import { moreIce } from '../ice.ts';
import { hoursText, kWhText, titledChange } from './words.ts';

/** Less than this share of the heat is not worth a change; a design choice. */
export const leastGainFraction = 0.005;
/** Sets whose heat lies so close together count as equal; a design choice. */
export const equalHeatFraction = 0.005;
/** Neither frost nor the liner's limit may come nearer than now by more [K]; a design choice. */
export const marginLossK = 0.5;

/**
 * Which set is advised: among those that surely bring more heat, come no nearer to frost and heat and freeze no more,
 * and whose heat is equal to the most, the one that starts and fills least. Advice is only given; nobody applies it.
 */
export function advise(points: readonly SweepPoint[]): SweepReport['advice'] {
  const [base, ...others] = points as [SweepPoint, ...SweepPoint[]];
  if (others.length === 0) return stay('nothing else could be tried');
  const worth = leastGainFraction * Math.max(base.heatHomeJ.value, 0);
  const surer = others.filter(({ heatGainJ }) => heatGainJ.low > 0 && heatGainJ.value >= worth);
  if (surer.length === 0) return stay(noGain(others, worth));
  const safe = surer.filter((point) => keepsMargins(point, base));
  if (safe.length === 0)
    return stay(
      `what brings more heat comes nearer to frost or to the liner's limit by more than ${marginLossK} K, or freezes more of the pan`,
    );
  const best = bestOf(safe, base);
  return { point: points.indexOf(best), text: reasonFor(best, base, surer.length - safe.length) };
}

const stay = (why: string) => ({ point: 0, text: `Leave the settings as they are: ${why}.` });

function noGain(others: readonly SweepPoint[], worth: number): string {
  const most = others.reduce((a, b) => (b.heatGainJ.value > a.heatGainJ.value ? b : a));
  const { value, low } = most.heatGainJ;
  if (value <= 0) return 'none of the others brings more heat';
  if (low > 0)
    return `the most that others gain is ${kWhText(value)} kWh, less than the ${kWhText(worth)} kWh that a change is worth`;
  return `the most that others gain is ${kWhText(value)} kWh, and by what is known of the loop that may be nothing`;
}

function keepsMargins(point: SweepPoint, base: SweepPoint): boolean {
  return (
    keeps(point.aboveFreezingK, base.aboveFreezingK) &&
    keeps(point.belowLinerLimitK, base.belowLinerLimitK) &&
    // The coldest water stops at 0 °C as soon as there is ice.
    !moreIce(point.mostIceKg, base.mostIceKg)
  );
}

/** A margin that nobody knows on either side was not touched; one that arises anew has to be a margin. */
function keeps(marginK: number | null, baseK: number | null): boolean {
  if (marginK === null) return true;
  return marginK >= (baseK ?? marginLossK) - marginLossK;
}

function bestOf(safe: readonly SweepPoint[], base: SweepPoint): SweepPoint {
  const most = Math.max(...safe.map(({ heatHomeJ }) => heatHomeJ.value));
  const near = most - equalHeatFraction * Math.max(base.heatHomeJ.value, 0);
  return safe
    .filter(({ heatHomeJ }) => heatHomeJ.value >= near)
    .reduce((a, b) => (compare(b, a) < 0 ? b : a));
}

/** Fewer starts and fills, then less electricity, then more heat. */
function compare(a: SweepPoint, b: SweepPoint): number {
  return (
    a.starts + a.fills - (b.starts + b.fills) ||
    a.electricityJ - b.electricityJ ||
    b.heatHomeJ.value - a.heatHomeJ.value
  );
}

function reasonFor(best: SweepPoint, base: SweepPoint, unsafe: number): string {
  const { value, low, high } = best.heatGainJ;
  const heatJ = base.heatHomeJ.value;
  // Of a winter's days that lost heat no share can be told.
  const share = heatJ > 0 ? ` ${((100 * value) / heatJ).toFixed(1)} % of the heat,` : '';
  return [
    `Advised: ${titledChange(best.change)}.`,
    `It brings ${kWhText(value)} kWh more (${kWhText(low)} to ${kWhText(high)} kWh),${share}`,
    `with ${count(best.starts)} starts instead of ${count(base.starts)}`,
    `and ${count(best.fills)} fills instead of ${count(base.fills)}.`,
    ...beyondLog(best),
    ...(unsafe === 0
      ? []
      : [
          `Left aside: ${unsafe} that come nearer to frost or to the liner's limit by more than ${marginLossK} K, or freeze more of the pan.`,
        ]),
  ].join(' ');
}

/** Shorter than this is not told of an advice [s]; a design choice. */
const leastBeyondLogS = 3600;

function beyondLog({ beyondLogS }: SweepPoint): string[] {
  if (beyondLogS < leastBeyondLogS) return [];
  return [
    `For ${hoursText(beyondLogS)} h the log cannot vouch: the loop would have gone where it never was.`,
  ];
}

const count = (value: number) => String(Math.round(value));
