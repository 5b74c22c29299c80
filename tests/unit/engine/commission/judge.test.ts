import { describe, expect, it } from 'vitest';
import {
  commissionDemand,
  commissionMs,
  firstStep,
  flowingS,
  isConfirmable,
} from '../../../../controller/engine/commission/demand.ts';
import {
  judgeDirection,
  judgeDrop,
  judgeFollowed,
  judgeSensors,
} from '../../../../controller/engine/commission/judge.ts';
import { makeSite, siteKinds } from '../rig.ts';
import { level, reservoirSite, type Scene, situationOf } from '../watch-rig.ts';

const doubtful = { quality: 'doubtful', value: 20, ageMs: 0, cause: 'jumped' } as const;

describe('the direction of the pump', () => {
  it.each([
    [{ flowLMin: 10 }, {}, 'passed', { flowLMin: 10 }],
    [{ flowLMin: 9.9 }, {}, 'failed', { flowLMin: 9.9 }],
    [{ flowLMin: 12 }, { fullFlowLMin: 24 }, 'passed', { flowLMin: 12 }],
    [{ flowLMin: 11.9 }, { fullFlowLMin: 24 }, 'failed', { flowLMin: 11.9 }],
    [{ panInletC: 22, storeBottomC: 20 }, {}, 'passed', { apartK: 2 }],
    [{ panInletC: 22.5, storeBottomC: 20 }, {}, 'failed', { apartK: 2.5 }],
    [{ panInletC: 18, storeBottomC: 20 }, {}, 'passed', { apartK: -2 }],
    [{ panInletC: 17.5, storeBottomC: 20 }, {}, 'failed', { apartK: -2.5 }],
    [{ panInletC: 22 }, {}, 'by-hand', {}],
    [{ storeBottomC: 22 }, {}, 'by-hand', {}],
    [{ flowLMin: doubtful }, {}, 'by-hand', {}],
  ] as const)('is judged from %o, knowing %o: %s', (values, learnt, result, told) => {
    expect(judgeDirection(situationOf({ values, state: { learnt } }))).toEqual({
      ...{ check: 'pump-direction', result, values: told },
    });
  });

  it('is judged against the reservoir where the pump draws from one', () => {
    const values = { panInletC: 20, reservoirC: 20, storeBottomC: 50 };
    expect(judgeDirection(situationOf({ site: reservoirSite, values })).result).toBe('passed');
  });
});

describe('sensors of the same water', () => {
  const check = 'sensors-agree';
  const judged = (values: Scene['values'], offsetK: number | null = null) =>
    judgeSensors(situationOf({ values: values ?? {} }), offsetK === null ? null : { offsetK, sdK: 0.3 });

  it('are outlet and store in the dark', () => {
    const inlet = { panInletC: 30, storeBottomC: 20 };
    expect(judged(inlet, 1.9)).toEqual({ check, result: 'passed', values: { offsetK: 1.9 } });
    expect(judged(inlet, 2)).toEqual({ check, result: 'failed', values: { offsetK: 2 } });
    expect(judged(inlet, -2).result).toBe('failed');
    expect(judged(inlet, -1.9).result).toBe('passed');
  });

  it('are inlet and source by day', () => {
    expect(judged({ panInletC: 22, storeBottomC: 20 })).toEqual({
      ...{ check, result: 'passed', values: { apartK: 2 } },
    });
    expect(judged({ panInletC: 22.5, storeBottomC: 20 })).toEqual({
      ...{ check, result: 'failed', values: { apartK: 2.5 } },
    });
    expect(judged({ panInletC: 17.5, storeBottomC: 20 }).result).toBe('failed');
    expect(judged({ panInletC: 20 })).toEqual({ check, result: 'by-hand', values: {} });
  });
});

describe('the outputs', () => {
  it.each([
    [true, true, false, 'passed'],
    [true, false, false, 'by-hand'],
    [false, true, false, 'by-hand'],
    [true, true, true, 'failed'],
  ])('seen on %s, off %s, otherwise %s: %s', (on, off, differed, result) => {
    expect(judgeFollowed({ on, off, differed })).toEqual({ check: 'outputs-follow', result, values: {} });
  });

  it('that nobody renews are for a person to see', () => {
    expect(judgeDrop(situationOf())).toEqual({
      ...{ check: 'outputs-drop', result: 'by-hand', values: { expiryS: level.control.outputExpiryS } },
    });
  });
});

describe('what a run demands', () => {
  const run = (step: string) => ({ step, findings: [] }) as never;

  it.each([
    ['emptying', 'empty'],
    ['filling', 'run'],
    ['flowing', 'run'],
    ['draining', 'empty'],
  ])('while it is %s: to %s', (step, goal) => {
    const state = { commission: run(step) };
    expect(commissionDemand(situationOf({ state }))).toEqual({ goal, code: `commissioning-${step}` });
  });

  it('is that of its first step before it begins', () => {
    expect(siteKinds.map((kind) => firstStep(makeSite(kind)))).toEqual([
      ...['emptying', 'emptying', 'filling', 'emptying'],
    ]);
    for (const commission of [null, run('done')])
      expect(commissionDemand(situationOf({ state: { commission } })).code).toBe('commissioning-emptying');
  });

  it('is a person to see the pan full under the pump, and empty without it', () => {
    const told = (step: string | null, phase: string) =>
      isConfirmable(
        situationOf({
          state: { commission: step === null ? null : run(step), phase: { name: phase, sinceMs: 0 } },
        }).state,
      );
    expect([told('filling', 'filling'), told('filling', 'empty')]).toEqual([true, false]);
    expect([told('draining', 'emptying'), told('draining', 'circulating')]).toEqual([true, false]);
    expect([told('flowing', 'circulating'), told(null, 'emptying')]).toEqual([false, false]);
  });

  it('takes three changes of the pan, three quarters of an hour at least', () => {
    const pumped = (ratedFlowLMin: number) => ({
      site: makeSite('drain-valve', undefined, { pump: { ratedFlowLMin, ratedHeadM: 3, ratedPowerW: 50 } }),
    });
    expect(flowingS(situationOf(pumped(20)))).toBe(3600);
    expect(flowingS(situationOf(pumped(40)))).toBe(2700);
    expect(commissionMs(situationOf(pumped(20)))).toBe(1000 * (4 * 60 + 200 + 3600 + 3600));
  });
});
