/**
 * What the engine may learn about a loop and keep, by name; a name ends in its unit. What was not learnt yet
 * is not there.
 */
export const learntMeaning: Readonly<Record<string, string>> = {
  fullFlowLMin: 'Flow through the full loop at full speed [L/min].',
  fullPowerW: 'Electric power of the pump at that flow [W].',
  primingS: 'Longest time in which a filling pump came to move water [s].',
  restContactKM2W:
    'Sheet above resting water over the heat that passes [Km2/W]; holds the offset of the two thermometers.',
  flowContactKM2W: 'The same above moving water [Km2/W].',
  reservoirDropMm: 'By how much a fill lowers the reservoir [mm].',
  reservoirFullMm: 'Level of the reservoir when all water has come home [mm].',
};
