import { good } from '../sense/facts.ts';
import type { Command, Situation } from '../situation.ts';
import type { SpeedMemory } from '../state.ts';
import { differencesOf } from '../want/timers.ts';
import { fullFlowLMin } from '../watch/pump-signs.ts';
import { speedForFlow } from './flow-of-speed.ts';

/** A speed between the least and full is reached in ten minutes at the most [1/ms]; a design choice. */
const rampPerMs = 1 / 600_000;
/** The speed is left as it is while it is this close to where it should be; a design choice. */
const deadband = 0.05;
/** A change under way is carried to this distance; a design choice. */
const reached = 0.01;
/** Before it turns round the speed stands for so long [ms]: ten times an hour at the most; a design choice. */
const turnMs = 360_000;
/** Water goes round at full speed for so long before the speed follows [ms]; a siphon needs it to form. */
const primedMs = 300_000;
/**
 * Share of the full flow below which a return pipe may let air in again. Flows are made for 0.6 m/s and more
 * (common practice), and air climbs back below 0.3 m/s.
 */
const leastFlowFraction = 0.5;
/** Below this the flow is not lowered any further; a design choice. */
const spareFlowFraction = 0.6;

export const fullSpeed: SpeedMemory = { fraction: 1, direction: 0, movedMs: 0 };

/**
 * Speed from now on of a pump that can be slowed.
 *
 * It is full while the pan fills, for protections, for the operator, and wherever it cannot be judged. While heat is
 * brought home it follows the gain by the difference between pan and store: least at the stop difference, full at
 * the start difference. A slower pump leaves a larger difference, so that both settle.
 */
export function followGain(before: SpeedMemory, situation: Situation, command: Command): SpeedMemory {
  const { state, site, facts, runMs } = situation;
  const { phase } = state;
  const differenceK = facts.differenceK ?? 0;
  const follows = phase.name === 'circulating' && command.by === 'want' && differenceK > 0;
  if (!follows || !facts.differenceIsGood || runMs - phase.sinceMs < primedMs) return fullSpeed;
  const flow = flowShare(situation);
  const floor = Math.max(
    situation.settings.leastSpeedFraction,
    flow === null ? speedForFlow(site, leastFlowFraction) : 0,
  );
  // A flow that is too little is mended at once.
  if (flow !== null && flow < leastFlowFraction) return moved(before, 1, situation);
  const target = floor + (1 - floor) * gainShare(differenceK, situation);
  if (flow !== null && flow < spareFlowFraction && target < before.fraction) return before;
  return mayMove(before, target, situation) ? moved(before, target, situation) : before;
}

/** Where the difference stands between stop (0) and start (1). */
function gainShare(differenceK: number, situation: Situation): number {
  const { startDifferenceK, stopDifferenceK } = differencesOf(situation);
  const share = (differenceK - stopDifferenceK) / (startDifferenceK - stopDifferenceK);
  return Math.min(1, Math.max(0, share));
}

/** Measured flow over the full flow; null where it is not measured. */
function flowShare({ readings, site, state }: Situation): number | null {
  const flowLMin = good(readings.flowLMin);
  return flowLMin === null ? null : flowLMin / fullFlowLMin(site, state.learnt);
}

function mayMove(before: SpeedMemory, target: number, { runMs, elapsedMs }: Situation): boolean {
  const gap = target - before.fraction;
  const restedMs = runMs - before.movedMs;
  if (Math.sign(gap) !== before.direction)
    return Math.abs(gap) >= deadband && (before.direction === 0 || restedMs >= turnMs);
  return Math.abs(gap) >= (restedMs <= elapsedMs ? reached : deadband);
}

function moved(before: SpeedMemory, target: number, { runMs, elapsedMs }: Situation): SpeedMemory {
  const gap = target - before.fraction;
  if (gap === 0) return before;
  const direction = gap > 0 ? 1 : -1;
  const stepFraction = Math.min(Math.abs(gap), rampPerMs * elapsedMs);
  return { fraction: before.fraction + direction * stepFraction, direction, movedMs: runMs };
}
