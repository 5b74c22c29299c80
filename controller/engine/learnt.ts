/**
 * What the engine may learn about a loop and keep, by name; a name ends in its unit. What was not learnt yet
 * is not there.
 */
export const learntMeaning: Readonly<Record<string, string>> = {
  outletOffsetK: 'What the pan outlet shows more than the store bottom when both are alike.',
  outletOffsetSdK: 'Standard deviation of that.',
};
