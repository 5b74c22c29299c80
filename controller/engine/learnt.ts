import type { Settings } from '../../shared-types/settings.ts';
import type { EngineState } from './state.ts';

type Learnt = EngineState['learnt'];

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
  outletOffsetK: 'What the pan outlet shows more than the store bottom when both are alike.',
  outletOffsetSdK: 'Standard deviation of that.',
  fillTimeS: 'Time in which the pump was seen to fill the empty pan, at full speed.',
  endsOffsetK: 'What the pan outlet shows more than the pan inlet when both are alike.',
  drainTimeS: 'Time in which the full pan was seen to empty.',
};

/** What is relied on is a measured time with this margin over it; a design choice. */
const marginOver = 1.2;
/** The fill timeout stays this far above the fill time, as the settings ask. */
const timeoutOver = 1.2;

/** The ranges of the settings of that name [s]. */
const leastFillS = 20;
const mostFillS = 7200;
const leastDrainS = 30;
const mostDrainS = 14_400;

function within(seconds: number, least: number, most: number): number {
  return Math.min(Math.max(seconds, least), most);
}

/** Time in which the full pan empties [s]: as measured, with its margin; else as set. */
export function drainTimeS(learnt: Learnt, settings: Settings): number {
  const { drainTimeS: measuredS } = learnt;
  if (measuredS === undefined) return settings.drainTimeS;
  return within(marginOver * measuredS, leastDrainS, mostDrainS);
}

/** Time in which the pump fills the pan [s]: as measured, with its margin; else as set. */
export function fillTimeS(learnt: Learnt, settings: Settings): number {
  const { fillTimeS: measuredS } = learnt;
  if (measuredS === undefined) return settings.fillTimeS;
  return Math.min(within(marginOver * measuredS, leastFillS, mostFillS), settings.fillTimeoutS / timeoutOver);
}

/** The newest answer for each set of settings: what was learnt changes once in months. */
const merged = new WeakMap<Settings, { readonly learnt: Learnt; readonly settings: Settings }>();

/** The settings with what was measured of the loop in the place of what was only set. */
export function withLearnt(settings: Settings, learnt: Learnt): Settings {
  if (learnt['fillTimeS'] === undefined && learnt['drainTimeS'] === undefined) return settings;
  const before = merged.get(settings);
  if (before?.learnt === learnt) return before.settings;
  const times = { fillTimeS: fillTimeS(learnt, settings), drainTimeS: drainTimeS(learnt, settings) };
  const after = { learnt, settings: { ...settings, ...times } };
  merged.set(settings, after);
  return after.settings;
}
