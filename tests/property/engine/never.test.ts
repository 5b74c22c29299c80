import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hazards } from '../../../controller/engine/hazards/table.ts';
import { step, stepOn } from '../../../controller/engine/index.ts';
import type { EngineInput } from '../../../shared-types/engine.ts';
import type { Invariant, Seen, Step } from '../invariants/invariant.ts';
import { isRestart } from '../invariants/invariant.ts';
import { withoutLabels } from '../invariants/repeat.ts';
import { allInvariants, invariants } from '../invariants/table.ts';
import { fewStretchesDraw, settingsDraw, siteDraw, stretchesDraw } from './draws.ts';
import { firstBroken, walk } from './walk.ts';

/** Sequences that are walked in every test run; `npm run fuzz` walks more. */
const numRuns = 20_000;

/** Holds for every sequence, or shows the shortest that breaks it. */
function hold(these: readonly Invariant[], draw: typeof stretchesDraw, own: Step, runs: number) {
  fc.assert(
    fc.property(draw, siteDraw, settingsDraw, (stretches, site, settings) => {
      expect(firstBroken(these, stretches, { site, settings, step: own })).toBeUndefined();
    }),
    { numRuns: runs },
  );
}

describe('never', () => {
  it(`in ${numRuns} sequences is a promise broken`, { timeout: 600_000 }, () => {
    hold(invariants, fewStretchesDraw, stepOn, numRuns);
  });

  it('in fewer sequences is one broken that takes longer to be asked', () => {
    hold(allInvariants, stretchesDraw, step, 200);
  });

  it('may an operator override a protection', () => {
    expect(hazards.filter(({ override }) => override !== 'never')).toEqual([]);
  });

  it('does a promise lack its words, or a name of its own', () => {
    for (const { promise, exceptions } of allInvariants)
      for (const sentence of [promise, ...exceptions]) expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(new Set(allInvariants.map(({ name }) => name)).size).toBe(allInvariants.length);
  });
});

describe('a calendar clock that steps to and fro', () => {
  const jumpsDraw = fc.array(fc.integer({ min: -86_400_000, max: 86_400_000 }), {
    minLength: 1,
    maxLength: 20,
  });

  /** Every third step the clock is right, so that no other time is kept to for long. */
  function jumped({ input }: Seen, at: number, jumps: readonly number[]): EngineInput {
    const jumpMs = at % 3 === 0 ? 0 : (jumps[at % jumps.length] ?? 0);
    return { ...input, nowMs: input.nowMs + jumpMs };
  }

  it('decides nothing but labels, through a whole sequence', () => {
    fc.assert(
      fc.property(stretchesDraw, siteDraw, settingsDraw, jumpsDraw, (stretches, site, settings, jumps) => {
        let state: Seen['state'] | undefined;
        for (const [at, seen] of walk(stretches, site, settings).entries()) {
          const input = isRestart(seen, site) ? seen.input : jumped(seen, at, jumps);
          const stepped = step(state ?? seen.before, input, site, settings);
          expect(withoutLabels(stepped.decision)).toBe(withoutLabels(seen.decision));
          ({ state } = stepped);
        }
      }),
      { numRuns: 300 },
    );
  });
});
