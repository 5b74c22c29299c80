import type { AllowedHeat } from '../../../shared-types/allowed-heat.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import type { TimeFormats } from '../format/times.ts';
import { en } from '../text/en.ts';

const text = en.live.today.allowed;

/** What is said of the heat that the weather allowed, and the share of it that came home, where that can be told. */
export interface AllowedWords {
  readonly sentence: string;
  /** 0 to 1. */
  readonly share?: number;
}

/** Less heat than this is nothing to compare with [J]: 0.1 kWh, a design choice. */
const leastHeatJ = 3.6e5;

export function allowedWords(allowed: AllowedHeat, numbers: NumberFormats, times: TimeFormats): AllowedWords {
  if (allowed.state === 'too-little-logged')
    return { sentence: text.tooLittleLogged(numbers.percent(allowed.coveredFraction)) };
  if (allowed.state !== 'told') return { sentence: text[allowed.state] };
  const { allowedJ, heatHomeJ, sun, untilMs } = allowed;
  const until = times.clock(untilMs);
  if (allowedJ < leastHeatJ) return { sentence: text.hardlyAny(until) };
  const share = heatHomeJ / allowedJ;
  const heat = inLine(numbers.heat(allowedJ));
  return {
    sentence: text[sun](numbers.percent(share), heat, until),
    share: Math.min(1, Math.max(0, share)),
  };
}
