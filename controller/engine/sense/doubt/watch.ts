import { type Channel, temperatureChannels } from '../../../../shared-types/channels.ts';
import type { Situation } from '../../situation.ts';
import type { Doubt, WatchMemory } from '../../state.ts';
import { airInTheSun, nightDewC } from './air.ts';
import type { Comparison } from './comparison.ts';
import { darkSince } from './dark.ts';
import { isNoisy, isStuck, updateStill } from './itself.ts';
import { pairOffsetTooLarge, storeOrder } from './others.ts';
import { panAtNight, sheetOutlet } from './pan.ts';
import { gainInTheDark, inletSource } from './stream.ts';

/** Sensors are looked at this often [ms]. */
const lookMs = 60_000;

const comparisons: readonly Comparison[] = [
  inletSource,
  gainInTheDark,
  panAtNight,
  sheetOutlet,
  storeOrder,
  airInTheSun,
  pairOffsetTooLarge,
];

/** Brings the watch over the sensors up to this step; once a minute they are compared. */
export function updateWatch(situation: Situation): WatchMemory {
  const { state, runMs } = situation;
  const before = state.watch;
  if (runMs - before.lookedMs < lookMs) return before;
  const darkMs = darkSince(situation);
  const still = updateStill(situation);
  const { evidence } = before;
  let counted: { -readonly [N in keyof WatchMemory['evidence']]: number } | null = null;
  let doubts = doubtsOfThemselves(before.doubts, still, situation);
  for (const comparison of comparisons) {
    const accused = comparison.judge(situation, darkMs === null ? null : runMs - darkMs);
    if (accused === null) continue;
    const { name, looks, looksToClear } = comparison;
    const count = weigh(evidence[name] ?? 0, accused.length > 0, comparison);
    if (count !== evidence[name]) {
      counted ??= { ...evidence };
      counted[name] = count;
    }
    if (accused.length > 0 && count >= looks) doubts = accuse(doubts, name, accused, runMs);
    else if (count <= -looksToClear) doubts = clear(doubts, name);
  }
  return {
    lookedMs: runMs,
    darkMs,
    evidence: counted ?? evidence,
    doubts,
    still,
    nightDewC: nightDewC(situation, darkMs),
  };
}

/** Looks against the sensors count up and looks for them down; whatever spoke for them before, the first counts. */
function weigh(before: number, against: boolean, { looks, looksToClear }: Comparison): number {
  return against ? Math.min(looks, Math.max(0, before) + 1) : Math.max(-looksToClear, before - 1);
}

type Doubts = WatchMemory['doubts'];

/**
 * Of those that a comparison accused before, those that it accuses again; else all that it accuses now. None where
 * one of them is in doubt already for another cause, which explains it.
 */
function accuse(doubts: Doubts, by: Comparison['name'], accused: readonly Channel[], runMs: number): Doubts {
  const doubt: Doubt = { cause: 'disagrees', by, provenMs: runMs };
  const again = accused.filter((channel) => doubts[channel]?.by === by);
  const rest = clear(doubts, by);
  if (accused.some((channel) => rest[channel] !== undefined)) return rest;
  const added = again.length > 0 ? again : accused;
  return { ...rest, ...Object.fromEntries(added.map((channel) => [channel, doubt])) };
}

function clear(doubts: Doubts, by: Doubt['by']): Doubts {
  let kept = doubts;
  for (const name in doubts)
    if ((doubts[name as Channel] as Doubt).by === by) kept = without(kept, name as Channel);
  return kept;
}

function without(doubts: Doubts, channel: Channel): Doubts {
  const { [channel]: _gone, ...rest } = doubts;
  return rest;
}

/** Sensors of which their own readings tell that they are stuck or noisy; those that no longer are go free. */
function doubtsOfThemselves(before: Doubts, still: WatchMemory['still'], situation: Situation): Doubts {
  const { state, runMs } = situation;
  let doubts = before;
  for (const channel of temperatureChannels) {
    if (state.sensing[channel] === undefined) continue;
    const cause = isStuck(channel, still, situation) ? 'stuck' : isNoisy(channel, situation) ? 'noisy' : null;
    if (cause !== null) doubts = { ...doubts, [channel]: { cause, by: 'itself', provenMs: runMs } };
    else if (doubts[channel]?.by === 'itself') doubts = without(doubts, channel);
  }
  return doubts;
}
