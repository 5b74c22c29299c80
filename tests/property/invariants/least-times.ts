import { type Invariant, isByHazard, isPumping, isRestart } from './invariant.ts';

const hourMs = 3_600_000;
const byHazard = 'A protection waits for nothing.';
/** Steady time is a sum of steps and may be off by rounding. */
const roundingMs = 1e-3;

export const leastTimesHold: Invariant = {
  name: 'least-times-hold',
  promise:
    'The pump runs and stands for its least times, and starts no more often in any hour than is allowed.',
  exceptions: [byHazard, 'A restart may cut a run short; the least time to stand begins anew with it.'],
  watch: ({ site, settings }) => {
    let changedMs = 0;
    const startsMs: number[] = [];
    return (seen) => {
      const { before, state, decision } = seen;
      const now = state.runMs;
      const restarted = isRestart(seen, site);
      if (restarted) changedMs = now;
      const was = before.outputs.pumpFraction > 0 && !restarted;
      if (was === isPumping(decision)) return;
      const heldMs = now - changedMs + roundingMs;
      const starts = startsMs.filter((startMs) => now - startMs < hourMs).length;
      if (!was) startsMs.push(now);
      changedMs = now;
      if (isByHazard(decision)) return;
      if (heldMs < 1000 * (was ? settings.leastOnS : settings.leastOffS))
        return `${was ? 'stopped' : 'started'} after ${heldMs} ms`;
      return !was && starts >= settings.startsPerHour ? `start ${starts + 1} within the hour` : undefined;
    };
  },
};
