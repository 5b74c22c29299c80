import type { Outputs } from '../../shared-types/engine.ts';
import type { Site } from '../../shared-types/site.ts';
import type { Phase, WaterMemory } from './state.ts';

/** A drain pump stops after this many drain times, so that it does not run dry for ever. */
const mostDrainTimes = 2;

/** What the outputs do in a phase. A drain that is not fitted is said to be without power. */
export function outputsOf(
  phase: Phase,
  water: WaterMemory,
  site: Site,
  drainTimeS: number,
  speedFraction: number,
  exchangerPumpOn: boolean,
): Outputs {
  const pumping = phase.name === 'filling' || phase.name === 'circulating';
  const draining = phase.name === 'emptying' || phase.name === 'stopped';
  const holding = pumping || phase.name === 'resting';
  return {
    pumpFraction: pumping ? speedFraction : 0,
    drainOpen: !(site.drain === 'drain-valve' && holding),
    drainPumpOn:
      site.drain === 'drain-pump' &&
      draining &&
      water.level !== 'empty' &&
      water.drainedMs < mostDrainTimes * drainTimeS * 1000,
    exchangerPumpOn,
  };
}

/** The same with the heat dump, where the loop has one. */
export function withHeatDump(outputs: Outputs, site: Site, heatDumpOn: boolean): Outputs {
  return site.heatDump === undefined ? outputs : { ...outputs, heatDumpOn };
}

/** @throws Error when outputs break what must never happen; the step then falls safe. */
export function assertSafe(outputs: Outputs, site: Site): void {
  const { pumpFraction, drainOpen, drainPumpOn, heatDumpOn } = outputs;
  if (!(pumpFraction >= 0 && pumpFraction <= 1)) throw new Error('pump fraction out of range');
  if (pumpFraction > 0 && drainPumpOn) throw new Error('pump against the drain pump');
  if (pumpFraction > 0 && drainOpen && site.drain === 'drain-valve')
    throw new Error('pump into an open drain');
  if (heatDumpOn === true && pumpFraction === 0) throw new Error('heat dump without the pump');
}
