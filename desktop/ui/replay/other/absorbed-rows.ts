import type { Comparison, Estimate } from '../../../../shared-types/tuning.ts';
import { inLine, type NumberFormats } from '../../format/numbers.ts';
import { bandBars } from './band-bar.ts';
import { type ShownValue, shownValue } from './side-rows.ts';

type Absorbed = NonNullable<Comparison['absorbed']>;

export interface AbsorbedRow {
  readonly fromMs: number;
  readonly toMs: number;
  readonly shown: ShownValue;
}

/** Where not even the upper end of the band is as bright, it is night [W/m2]. */
const darkWM2 = 5;

/** The steps of a day in which there was light, in words, with bars on one scale. */
export function absorbedRows(absorbed: Absorbed, numbers: NumberFormats): readonly AbsorbedRow[] {
  const { fromMs, stepMs, valueWM2, lowWM2, highWM2 } = absorbed;
  const lit = valueWM2
    .map((value, step) => ({ step, value, low: lowWM2[step] ?? value, high: highWM2[step] ?? value }))
    .filter(({ high }) => high >= darkWM2);
  const bars = lit.length === 0 ? undefined : bandBars([dark, ...lit]);
  const show = (value: number) => inLine(numbers.channel('WM2', value));
  return lit.map((estimate, index) => ({
    fromMs: fromMs + estimate.step * stepMs,
    toMs: fromMs + (estimate.step + 1) * stepMs,
    shown: { ...shownValue(estimate, show), bar: bars?.[index + 1] ?? null },
  }));
}

/** The scale begins at nought. */
const dark: Estimate = { value: 0, low: 0, high: 0 };

/** What a square metre took up through the day [J]. */
export function absorbedJM2({ stepMs, valueWM2 }: Absorbed): number {
  return valueWM2.reduce((sum, value) => sum + (value * stepMs) / 1000, 0);
}
