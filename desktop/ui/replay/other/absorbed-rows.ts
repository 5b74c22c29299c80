import { type Absorbed, litSteps } from '../../../../shared-types/absorbed.ts';
import type { Estimate } from '../../../../shared-types/tuning.ts';
import { inLine, type NumberFormats } from '../../format/numbers.ts';
import { bandBars } from './band-bar.ts';
import { type ShownValue, shownValue } from './side-rows.ts';

export interface AbsorbedRow {
  readonly fromMs: number;
  readonly toMs: number;
  readonly shown: ShownValue;
}

/** The steps of a day in which there was light, in words, with bars on one scale. */
export function absorbedRows(absorbed: Absorbed, numbers: NumberFormats): readonly AbsorbedRow[] {
  const lit = litSteps(absorbed);
  const bars = lit.length === 0 ? undefined : bandBars([dark, ...lit]);
  const show = (value: number) => inLine(numbers.channel('WM2', value));
  return lit.map(({ fromMs, toMs, ...estimate }, index) => ({
    fromMs,
    toMs,
    shown: { ...shownValue(estimate, show), bar: bars?.[index + 1] ?? null },
  }));
}

/** The scale begins at nought. */
const dark: Estimate = { value: 0, low: 0, high: 0 };

/** What a square metre took up through the day [J]. */
export function absorbedJM2({ stepMs, valueWM2 }: Absorbed): number {
  return valueWM2.reduce((sum, value) => sum + (value * stepMs) / 1000, 0);
}
