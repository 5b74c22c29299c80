import { en } from '../text/en.ts';

/** Days from one to another in words; of a single day its name. */
export const spanText = (from: string, to: string, name: (day: string) => string): string =>
  from === to ? name(from) : en.panCheck.span(name(from), name(to));
