import { describe, expect, it } from 'vitest';
import { step, stepOn } from '../../../controller/engine/index.ts';
import { canEmpty, canRest } from '../../../controller/engine/pan.ts';
import { phaseNames } from '../../../shared-types/engine.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { Step } from '../invariants/invariant.ts';
import { explore, trapped } from './explore.ts';
import { askedAnywhere, machines, shortSettings } from './machines.ts';

const depth = { whole: false, representatives: 1 };

/** Phases that the machine of a site has. */
function phasesOf(site: Site) {
  const never = new Set([
    ...(canEmpty(site) ? [] : ['emptying', 'empty']),
    ...(canRest(site) ? [] : ['resting']),
  ]);
  return phaseNames.filter((name) => !never.has(name));
}

describe('every state that can be reached', () => {
  it.each(machines)(
    'of a loop with %s keeps the promises and leads on to every phase',
    { timeout: 600_000 },
    (name, site) => {
      const explored = explore({ site, settings: shortSettings, step: stepOn }, askedAnywhere, depth);
      console.log(
        `${name}: ${explored.states} states, ${explored.transitions} transitions, ${explored.reasons.size} reasons`,
      );
      expect(explored.broken).toBeUndefined();
      for (const phase of phasesOf(site))
        expect([phase, trapped(explored.nodes, (state) => state.phase.name === phase)]).toEqual([phase, []]);
      for (const code of ['frost-measured', 'frost-blind', 'sensors-failed', 'store-limit'] as const)
        expect([code, explored.reasons.has(code)]).toEqual([code, true]);
    },
  );
});

describe('the exploration', { timeout: 600_000 }, () => {
  const [, site] = machines[0] as (typeof machines)[number];
  const exploreWith = (own: Step) =>
    explore({ site, settings: shortSettings, step: own }, askedAnywhere, depth);

  it('finds a pump that runs in one corner of the machine', () => {
    const spoilt: Step = (state, input, own, settings) => {
      const stepped = step(state, input, own, settings);
      const { heat, failure, operator } = stepped.state;
      if (!heat.storeFull || failure.count < 2 || operator.lease === null) return stepped;
      const outputs = { ...stepped.decision.outputs, pumpFraction: 1 };
      return { ...stepped, decision: { ...stepped.decision, outputs } };
    };
    expect(exploreWith(spoilt).broken).toMatch(/^pump-only-when-pumping: pump in /);
  });

  it('finds a phase that nothing leads out of', () => {
    const stuck: Step = (state, input, own, settings) => {
      const stepped = step(state, input, own, settings);
      const { phase } = stepped.state;
      const locked = state.phase.name === 'stopped' && phase.name !== 'stopped';
      return locked
        ? step(
            { ...state, failure: { ...state.failure, count: 2 } },
            { ...input, request: null },
            own,
            settings,
          )
        : stepped;
    };
    const { nodes } = explore({ site, settings: shortSettings, step: stuck }, [], depth);
    expect(trapped(nodes, (state) => state.phase.name === 'circulating')).not.toEqual([]);
  });
});
