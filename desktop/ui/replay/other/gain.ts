import type { Estimate } from '../../../../shared-types/tuning.ts';
import { inLine, type NumberFormats } from '../../format/numbers.ts';
import { en } from '../../text/en.ts';

const text = en.tuning.other;

/** Whether a band leaves it open on which side of nought its value lies. */
export function sideOf({ low, high }: Estimate): 'more' | 'less' | 'unclear' {
  if (low > 0) return 'more';
  return high < 0 ? 'less' : 'unclear';
}

/** What other setpoints would have gained, in one sentence; the band decides what may be said. */
export function gainText(gainJ: Estimate, sameSettings: boolean, numbers: NumberFormats): string {
  if (sameSettings) return text.equal;
  const heat = (valueJ: number) => inLine(numbers.heat(valueJ));
  const { value, low, high } = gainJ;
  switch (sideOf(gainJ)) {
    case 'more':
      return text.more(heat(value), heat(low), heat(high));
    case 'less':
      return text.less(heat(-value), heat(-high), heat(-low));
    default:
      return text.unclear(signedRange(low, high, heat));
  }
}

/** An amount with the word that says its direction; what is shown as nought has none. */
export function signedText(
  value: number,
  show: (amount: number) => string,
  less: (amount: string) => string = text.lessOf,
): string {
  const amount = show(Math.abs(value));
  const nought = digitsOf(show(0))[0];
  if (digitsOf(amount).every((digit) => digit === nought)) return text.exactly;
  return value > 0 ? text.moreOf(amount) : less(amount);
}

/** A band of which each end may lie on either side of nought, in as few words as that takes. */
export function signedRange(low: number, high: number, show: (amount: number) => string): string {
  const { range } = en.tuning.band;
  if (low > 0) return text.moreOf(range(show(low), show(high)));
  if (high < 0) return text.lessOf(range(show(-high), show(-low)));
  return range(signedText(low, show), signedText(high, show));
}

/** Digits as the reader's own language writes them. */
const digitsOf = (shown: string): string[] => [...shown].filter((sign) => /\p{Nd}/u.test(sign));
