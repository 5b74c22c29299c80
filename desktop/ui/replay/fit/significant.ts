/** Digits that are shown of a fitted number: more would say more than is known. A design choice. */
const shownDigits = 3;

/** A number with its unit to three digits that count; a unit of 1 is left out. */
export function significant(value: number, unit: string): string {
  const number = new Intl.NumberFormat(undefined, { maximumSignificantDigits: shownDigits }).format(value);
  return unit === '' || unit === '1' ? number : `${number}\u00a0${unit}`;
}
