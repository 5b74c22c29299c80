import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { figure } from './explain/figure.ts';
import type { Values } from './known.ts';
import { stabilityOf } from './pair/stability.ts';
import { pairOffset } from './pair/uncertainty.ts';
import type { EngineState } from './state.ts';
import { differencesFor } from './want/differences.ts';

type Learnt = EngineState['learnt'];

/** What is to be known of a set of settings that is allowed, yet has a drawback. */
export interface Remark {
  readonly code: string;
  readonly values: Values;
  readonly text: string;
}

interface RemarkRule {
  readonly code: string;
  /** The numbers of the remark where it is due, else null. */
  readonly when: (site: Site, settings: Settings, learnt: Learnt) => Values | null;
  readonly text: (values: Values) => string;
}

const rules: readonly RemarkRule[] = [
  {
    code: 'pump-may-cycle',
    when: (site, settings, learnt) => {
      const { holds, leastStartDifferenceK } = stabilityOf(site, settings, learnt);
      const { startDifferenceK, stopDifferenceK } = settings;
      return holds ? null : { startDifferenceK, stopDifferenceK, leastStartDifferenceK };
    },
    text: (v) =>
      `With a stop difference of ${figure(v, 'stopDifferenceK')} K a pump that starts at ` +
      `${figure(v, 'startDifferenceK')} K may be stopped by its own cold water; ` +
      `from ${figure(v, 'leastStartDifferenceK')} K on it is not.`,
  },
  {
    code: 'sensors-too-coarse',
    when: (_site, settings, learnt) => {
      const { sdK } = pairOffset(learnt);
      const used = differencesFor(settings, sdK);
      if (used === settings) return null;
      return { startDifferenceK: used.startDifferenceK, stopDifferenceK: used.stopDifferenceK, sdK };
    },
    text: (v) =>
      `The sensors of pan and store are known to within ${figure(v, 'sdK', 2)} K of each other, so the pump starts ` +
      `at ${figure(v, 'startDifferenceK')} K and stops at ${figure(v, 'stopDifferenceK')} K.`,
  },
];

/** Every remark on these settings at this site, in the order of the table. */
export function settingsRemarks(site: Site, settings: Settings, learnt: Learnt): readonly Remark[] {
  return rules.flatMap(({ code, when, text }) => {
    const values = when(site, settings, learnt);
    return values === null ? [] : [{ code, values, text: text(values) }];
  });
}
