/** What is measured, so that a number gets its unit. */
export type LearntUnit = 'LMin' | 'W' | 'S' | 'KM2W' | 'Mm' | 'K';

/** What the control logic may learn of a loop, by its name there; the number follows with its unit. */
export const learntTitles: Readonly<Record<string, { readonly title: string; readonly unit: LearntUnit }>> = {
  fullFlowLMin: { title: 'Flow through the full loop at full speed', unit: 'LMin' },
  fullPowerW: { title: 'Power of the pump at that flow', unit: 'W' },
  primingS: { title: 'Longest time until a filling pump moved water', unit: 'S' },
  restContactKM2W: { title: 'Sheet to resting water, thermal resistance', unit: 'KM2W' },
  flowContactKM2W: { title: 'Sheet to moving water, thermal resistance', unit: 'KM2W' },
  reservoirDropMm: { title: 'By how much a fill lowers the reservoir', unit: 'Mm' },
  reservoirFullMm: { title: 'Level of the reservoir with all water at home', unit: 'Mm' },
  outletOffsetK: { title: 'Pan outlet shows more than the store bottom in the same water', unit: 'K' },
  outletOffsetSdK: { title: 'Standard deviation of that', unit: 'K' },
  endsOffsetK: { title: 'Pan outlet shows more than the pan inlet in the same water', unit: 'K' },
  fillTimeS: { title: 'Time in which the empty pan fills', unit: 'S' },
  drainTimeS: { title: 'Time in which the full pan empties', unit: 'S' },
};
