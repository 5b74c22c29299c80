import { legionella } from '../../shared-types/cautions.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { figure } from './explain/figure.ts';
import { scaldC, storeLimitC } from './hazards/heat.ts';
import type { Values } from './known.ts';
import { stabilityOf } from './pair/stability.ts';
import { pairOffset } from './pair/uncertainty.ts';
import { canEmpty, canRest } from './pan.ts';
import { dryStagnationC, wetStagnationC } from './stagnation.ts';
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
  {
    code: 'liner-not-for-dry-sheet',
    when: ({ pan }) => overLiner(dryStagnationC(), pan.linerLimitC),
    text: (v) =>
      `A dry sheet reaches ${figure(v, 'sheetC', 0)} °C on a hot, still day; the liner stands ` +
      `${figure(v, 'linerLimitC', 0)} °C. The empty pan needs shade, or a liner that stands more.`,
  },
  {
    code: 'liner-not-for-still-water',
    when: (site) => overLiner(wetStagnationC(site), site.pan.linerLimitC),
    text: (v) =>
      `A full, resting pan reaches ${figure(v, 'sheetC', 0)} °C on a hot, still day; the liner stands ` +
      `${figure(v, 'linerLimitC', 0)} °C. The store has to take that heat, or the sheet needs shade.`,
  },
  {
    code: 'store-scalds',
    when: (site, settings) => {
      const limitC = storeLimitC(site, settings);
      return limitC > scaldC ? { limitC, scaldC } : null;
    },
    text: (v) =>
      `The store may come to ${figure(v, 'limitC', 0)} °C. Water of ${figure(v, 'scaldC', 0)} °C burns the skin ` +
      'in some five seconds: a mixing valve has to stand between store and taps.',
  },
  {
    code: 'store-grows-legionella',
    when: (site, settings) => {
      const limitC = storeLimitC(site, settings);
      return limitC < scaldC ? { limitC, storedAtC: legionella.storedAtC } : null;
    },
    text: (v) =>
      `The store stays below ${figure(v, 'storedAtC', 0)} °C, at ${figure(v, 'limitC', 0)} °C or less. Legionella ` +
      'may grow in it: heat what is drawn for showers and taps by an exchanger, or heat it further.',
  },
  {
    code: 'no-batches-here',
    when: (site, settings) => (settings.batchRunning === 1 && !canRest(site) ? {} : null),
    text: () =>
      'This pan empties as soon as the pump stops, so it cannot warm a batch at rest: the pump circulates instead.',
  },
  {
    code: 'warm-season-only',
    when: (site) => (canEmpty(site) ? null : {}),
    text: () =>
      'This pan cannot be emptied by itself: it is for the warm season, and is emptied by hand before the first frost.',
  },
];

/** A remark's numbers where a sheet gets hotter than the liner stands. */
function overLiner(sheetC: number, linerLimitC: number): Values | null {
  return sheetC > linerLimitC ? { sheetC, linerLimitC } : null;
}

/** Every remark on these settings at this site, in the order of the table. */
export function settingsRemarks(site: Site, settings: Settings, learnt: Learnt): readonly Remark[] {
  return rules.flatMap(({ code, when, text }) => {
    const values = when(site, settings, learnt);
    return values === null ? [] : [{ code, values, text: text(values) }];
  });
}
