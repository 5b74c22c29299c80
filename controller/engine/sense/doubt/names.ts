/** The comparisons by which sensors may accuse each other. */
export const comparisonNames = [
  'inlet-source',
  'gain-in-the-dark',
  'pan-at-night',
  'sheet-outlet',
  'store-order',
  'air-in-the-sun',
  'pair-offset',
] as const;
export type ComparisonName = (typeof comparisonNames)[number];

const known: ReadonlySet<unknown> = new Set(comparisonNames);

export function isComparisonName(value: unknown): value is ComparisonName {
  return known.has(value);
}
