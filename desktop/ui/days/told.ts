import { en } from '../text/en.ts';

/** A value in words, or that the days of another logger do not tell it. */
export function told<Value>(value: Value | null, words: (value: Value) => string): string {
  return value === null ? en.days.untold : words(value);
}
