import { readWholeDays, type WholeDays } from '../replay/whole-days.ts';

/**
 * The kept days that were asked for, each once and rising.
 *
 * @param asked - Spans of whole days, one or more. @param kept - Days that the log holds, rising.
 */
export function daysAsked(asked: readonly string[], kept: readonly string[]): WholeDays {
  const wanted = new Set<string>();
  for (const text of asked) {
    const read = readWholeDays(text, kept);
    if (!read.ok) return read;
    for (const day of read.days) wanted.add(day);
  }
  return { ok: true, days: [...wanted].sort() };
}
