export type DaysAsked =
  | { readonly ok: true; readonly days: readonly string[] }
  | { readonly ok: false; readonly why: string };

/**
 * The kept days that were asked for: each by its name, FROM..TO for all kept ones between, or latest.
 *
 * @param kept - Days that the log holds, rising.
 */
export function daysAsked(asked: readonly string[], kept: readonly string[]): DaysAsked {
  if (kept.length === 0) return { ok: false, why: 'the log holds no day' };
  const wanted = new Set<string>();
  for (const word of asked) {
    const [from = '', to = from] = (word === 'latest' ? (kept.at(-1) as string) : word).split('..');
    const found = kept.filter((day) => day >= from && day <= to);
    if (found.length === 0)
      return { ok: false, why: `nothing of '${word}' is kept; there are: ${kept.join(', ')}` };
    for (const day of found) wanted.add(day);
  }
  return { ok: true, days: [...wanted].sort() };
}
