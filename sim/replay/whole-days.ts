import { readSpanText } from './span-text.ts';

export type WholeDays =
  | { readonly ok: true; readonly days: readonly string[] }
  | { readonly ok: false; readonly why: string };

/**
 * The kept days that a span means, as people write it: `latest`, a day, or `DAY..DAY` with both days.
 *
 * @param kept - Local days that the log holds, rising.
 */
export function readWholeDays(text: string, kept: readonly string[]): WholeDays {
  // No zone matters: spans of instants are refused.
  const read = readSpanText(text, { days: kept, timeZone: 'UTC' });
  if (!read.ok) return read;
  const { span } = read;
  if (!('day' in span))
    return { ok: false, why: `'${text}' is no span of whole days: write DAY or DAY..DAY` };
  return { ok: true, days: kept.filter((day) => day >= span.day && day <= span.lastDay) };
}
