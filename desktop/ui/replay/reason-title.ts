import { en } from '../text/en.ts';

/** A reason by its code; one of another version by the code itself. */
export function reasonTitle(code: string): string {
  const titles: Readonly<Record<string, string>> = en.reasons;
  return Object.hasOwn(titles, code) ? (titles[code] ?? code) : code;
}
