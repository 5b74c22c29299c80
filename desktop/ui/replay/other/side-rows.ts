import type { Comparison, DayOutcome, Estimate } from '../../../../shared-types/tuning.ts';
import { inLine, type NumberFormats } from '../../format/numbers.ts';
import { durationText } from '../../format/times.ts';
import { en } from '../../text/en.ts';
import { type BandBar, bandBars } from './band-bar.ts';
import { signedRange, signedText } from './gain.ts';

/** A value with its band, as it is shown. */
export interface ShownValue {
  readonly value: string;
  /** Null where the band has no width. */
  readonly band: string | null;
  readonly bar: BandBar | null;
}

/** One thing of the day on all sides; null where it is not known. */
export interface SideRow {
  readonly title: string;
  readonly logged: string | null;
  readonly base: ShownValue | null;
  readonly tried: ShownValue | null;
  readonly difference: string | null;
}

const { rows: titles } = en.tuning.other;

/** Everything of a comparison that stands beside each other, in words. */
export function sideRows(comparison: Comparison, numbers: NumberFormats): readonly SideRow[] {
  const { logged, base, tried, heatGainJ, bestPossibleJ } = comparison;
  const heat = (valueJ: number) => inLine(numbers.heat(valueJ));
  const kelvin = (valueK: number) => inLine(numbers.difference(valueK));
  const lasting = (valueS: number) => durationText(valueS * 1000);
  // A tenth of a fill is nothing.
  const count = (value: number) => inLine(numbers.measure(Math.round(value), 0, ''));
  const row = (title: string, of: keyof DayOutcome, show: Show, was: number | null): SideRow => ({
    title,
    logged: was === null ? null : show(was),
    ...bothSides(base[of], tried[of], show, show === count ? en.tuning.other.fewerOf : undefined),
  });
  return [
    {
      ...row(titles.heatHome, 'heatHomeJ', heat, logged.heatHomeJ),
      difference: withBand(heatGainJ, heat),
    },
    ...shareRow(comparison, bestPossibleJ, numbers),
    row(titles.starts, 'starts', count, logged.starts),
    row(titles.fills, 'fills', count, logged.fills),
    row(titles.pumpRun, 'pumpRunS', lasting, logged.pumpRunS),
    row(titles.electricity, 'electricityJ', heat, logged.electricityJ),
    row(titles.frost, 'aboveFreezingK', kelvin, null),
    row(titles.liner, 'belowLinerLimitK', kelvin, null),
  ];
}

type Show = (value: number) => string;

function bothSides(
  base: Estimate | null,
  tried: Estimate | null,
  show: Show,
  less?: (amount: string) => string,
): Pick<SideRow, 'base' | 'tried' | 'difference'> {
  const there = [base, tried].filter((one) => one !== null);
  const bars = there.length === 0 ? undefined : bandBars(there);
  const shown = (one: Estimate | null): ShownValue | null =>
    one === null ? null : { ...shownValue(one, show), bar: bars?.[there.indexOf(one)] ?? null };
  return {
    base: shown(base),
    tried: shown(tried),
    difference: base === null || tried === null ? null : signedText(tried.value - base.value, show, less),
  };
}

/** An estimate in words. */
export function shownValue({ value, low, high }: Estimate, show: Show): Omit<ShownValue, 'bar'> {
  return { value: show(value), band: low === high ? null : en.tuning.band.range(show(low), show(high)) };
}

/** A difference and the band of it. */
function withBand({ value, low, high }: Estimate, show: Show): string {
  const middle = signedText(value, show);
  if (low === high) return middle;
  return `${middle} (${signedRange(low, high, show)})`;
}

/** The share that each side reached of what perfect foresight could do; no row where that was not asked for. */
function shareRow(
  { logged, base, tried }: Comparison,
  bestJ: number | null,
  numbers: NumberFormats,
): readonly SideRow[] {
  if (bestJ === null || bestJ <= 0) return [];
  const share = ({ value, low, high }: Estimate): Estimate => ({
    value: value / bestJ,
    low: low / bestJ,
    high: high / bestJ,
  });
  const sides = bothSides(share(base.heatHomeJ), share(tried.heatHomeJ), numbers.percent);
  return [
    {
      title: titles.share,
      logged: logged.heatHomeJ === null ? null : numbers.percent(logged.heatHomeJ / bestJ),
      ...sides,
      difference: null,
    },
  ];
}
