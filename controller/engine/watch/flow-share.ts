import { lowPass } from '../blocks/low-pass.ts';
import { good } from '../sense/facts.ts';
import { isPumping, type Situation } from '../situation.ts';
import type { FlowMemory } from './memory.ts';
import { takenSince } from './pump-signs.ts';

/** Time constant behind which flow and power are judged and learnt [ms]; a design choice. */
const smoothingMs = 300_000;
/** Time after its start in which the flow of a full loop finds its place, air and siphon included [ms]. */
const settlingMs = 300_000;
/** Flow and power are learnt once for each such stretch at full speed [ms]. */
export const lessonMs = 600_000;
/** From this speed on it counts as the full one. */
export const fullSpeedFraction = 0.99;

type Smoothed = Pick<FlowMemory, 'flowLMin' | 'powerW' | 'smoothedMs'>;

const none: Smoothed = { flowLMin: null, powerW: null, smoothedMs: 0 };

/** Flow and power of the pump at full speed once they have settled, smoothed; at other speeds nothing is compared. */
export function updateSmoothed(before: FlowMemory, situation: Situation): Smoothed {
  const { state, runMs, elapsedMs, readings } = situation;
  const { phase, outputs } = state;
  const full = isPumping(state) && outputs.pumpFraction >= fullSpeedFraction;
  if (!full || runMs - phase.sinceMs < settlingMs) return none;
  const flowLMin = good(takenSince(readings.flowLMin, situation));
  const powerW = good(takenSince(readings.pumpPowerW, situation));
  return {
    flowLMin: flowLMin === null ? null : lowPass(before.flowLMin, flowLMin, elapsedMs, smoothingMs),
    powerW: powerW === null ? null : lowPass(before.powerW, powerW, elapsedMs, smoothingMs),
    smoothedMs: (before.smoothedMs < lessonMs ? before.smoothedMs : 0) + elapsedMs,
  };
}
