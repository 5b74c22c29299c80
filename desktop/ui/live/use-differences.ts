import { selectClockSpeed, selectSite } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import {
  selectDrainDiffers,
  selectDrainOpen,
  selectDrainTold,
  selectPumpDiffers,
  selectPumpFraction,
  selectPumpTold,
} from '../store/output-selectors.ts';
import { en } from '../text/en.ts';
import { useHeld } from './use-held.ts';

const text = en.live.drawing.differs;

/** A device may take so many steps to do what it was told and to say so; a design choice. */
const graceSteps = 3;
/** Less than this nobody can read [ms]. */
const leastGraceMs = 2000;

const selectGraceMs = (state: LiveState): number =>
  Math.max(
    leastGraceMs,
    (1000 * graceSteps * (selectSite(state)?.control.stepS ?? 5)) / selectClockSpeed(state),
  );

/** Sentences on outputs that do something else than they were told. */
export function useDifferences(): readonly string[] {
  const graceMs = useLive(selectGraceMs);
  const pump = useHeld(useLive(selectPumpDiffers), graceMs);
  const drain = useHeld(useLive(selectDrainDiffers), graceMs);
  const pumpRuns = useLive(selectPumpFraction) > 0;
  const pumpTold = useLive(selectPumpTold) > 0;
  const drainOpen = useLive(selectDrainOpen);
  const drainTold = useLive(selectDrainTold);
  return [
    ...(pump && pumpRuns !== pumpTold ? [text.pump[`${pumpRuns}`]] : []),
    ...(drain && drainOpen !== drainTold ? [text.drain[`${drainOpen}`]] : []),
  ];
}
