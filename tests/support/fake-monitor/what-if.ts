import { defaultSettings } from '../../../shared-types/settings.ts';
import type { WhatIfReport } from '../../../shared-types/what-if.ts';
import { testNowMs } from './snapshot.ts';

/** A made-up answer: the pump would have started later. */
export const testWhatIf = (day: string): WhatIfReport => ({
  day,
  steps: 17_280,
  differences: 212,
  firstDifference: {
    atMs: testNowMs - 28 * 3_600_000,
    base: {
      phase: 'circulating',
      pumpFraction: 1,
      drainOpen: false,
      reason: 'The pan is 1.2 K above the store bottom; the pump starts at 1.0 K.',
    },
    other: {
      phase: 'resting',
      pumpFraction: 0,
      drainOpen: false,
      reason: 'The pan is 1.2 K above the store bottom; the pump starts at 2.5 K.',
    },
  },
  base: { starts: 5, fills: 1, pumpRunS: 21_600 },
  other: { starts: 3, fills: 1, pumpRunS: 19_800 },
  settingsThen: { ...defaultSettings, fillDelayS: 150 },
  remarks: [],
});
