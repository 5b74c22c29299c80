import { describe, expect, it } from 'vitest';
import { safeOutputs } from '../../../../controller/engine/state.ts';
import { updateFlowLow } from '../../../../controller/engine/watch/flow-low.ts';
import { updateSmoothed } from '../../../../controller/engine/watch/flow-share.ts';
import { learnFlow } from '../../../../controller/engine/watch/learn-flow.ts';
import { calmFlow, newUpkeep } from '../../../../controller/engine/watch/memory.ts';
import { noFlowKindOf, noFlowKinds } from '../../../../controller/engine/watch/no-flow-kind.ts';
import { fullFlowLMin } from '../../../../controller/engine/watch/pump-signs.ts';
import { seenRunning } from '../../../../controller/engine/watch/runs-on.ts';
import { level, situationOf } from '../watch-rig.ts';

const nowMs = 3_600_000;

describe('the full flow', () => {
  it('is what was learnt, else the rating', () => {
    expect([fullFlowLMin(level, { fullFlowLMin: 15 }), fullFlowLMin(level, {})]).toEqual([15, 20]);
  });

  it('that is just healthy teaches the power beside it', () => {
    const power = (flowLMin: number) => {
      const flow = { ...calmFlow, flowLMin, powerW: 50, smoothedMs: 600_000 };
      const learnt = { fullFlowLMin: 20 };
      return learnFlow(learnt, situationOf({ state: { flow, learnt } }))['fullPowerW'];
    };
    expect([power(19), power(18.99)]).toEqual([50, undefined]);
  });
});

describe('a flow or a power that cannot be read', () => {
  const before = { ...calmFlow, flowLMin: 20, powerW: 40, smoothedMs: 10_000 };

  it('has no mean', () => {
    expect(updateSmoothed(before, situationOf({ values: { flowLMin: 20 } }))).toMatchObject({
      ...{ flowLMin: 20, powerW: null },
    });
    expect(updateSmoothed(before, situationOf({ values: { pumpPowerW: 40 } }))).toMatchObject({
      ...{ flowLMin: null, powerW: 40 },
    });
  });

  it('does not tell that water runs backwards, even before the output is on', () => {
    expect(noFlowKindOf(situationOf({ state: { outputs: safeOutputs } }))).toBe(noFlowKinds.unknown);
  });

  it('leaves what was told of a low flow', () => {
    const told = { ...newUpkeep, lowFlowLMin: 10 };
    const flow = { ...calmFlow, lowMs: 0 };
    expect(updateFlowLow(told, situationOf({ state: { flow } }))).toBe(told);
  });
});

describe('a flow that is well', () => {
  it('changes nothing where none was low', () => {
    const flow = { ...calmFlow, flowLMin: 20, smoothedMs: 300_000 };
    expect(updateFlowLow(newUpkeep, situationOf({ state: { flow } }))).toBe(newUpkeep);
  });
});

describe('what the device says of a pump that is off', () => {
  const says = (pumpFraction: number, ageMs: number) =>
    seenRunning({
      ...situationOf({
        state: { outputs: safeOutputs, pump: { sinceMs: nowMs - 12_000, startsMs: [], exercising: false } },
      }),
      feedback: { pumpFraction, drainOpen: null, ageMs },
    });

  it('counts once it was given time to stop, by when it said so', () => {
    expect([says(1, 2000), says(1, 2001), says(0, 2000)]).toEqual([true, false, false]);
  });
});
