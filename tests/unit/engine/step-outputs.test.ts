import { describe, expect, it } from 'vitest';
import { circulatingLoop, emptyLoop, Loop, makeSite, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');
const measured = makeSite('drain-valve', ['panOutletC', 'panSheetC', 'storeBottomC', 'flowLMin']);

function change(loop: Loop, slots: Partial<Loop['state']>): Loop {
  loop.state = { ...loop.state, ...slots };
  return loop;
}

describe('a failure', () => {
  const failing = (count: number) => {
    const loop = circulatingLoop(measured).run(60);
    change(loop, { failure: { count, cause: count === 0 ? null : 'no-flow' } });
    loop.set({ flowLMin: 0 });
    for (let at = 0; at < 20 && loop.phase === 'circulating'; at++) loop.step();
    return loop;
  };

  it('empties the pan, and locks the loop at once where it is the second', () => {
    const first = failing(0);
    expect([first.phase, first.why, first.state.failure.count]).toEqual(['emptying', 'dry-running', 1]);
    const second = failing(1);
    expect([second.phase, second.why, second.state.failure.count]).toEqual(['stopped', 'dry-running', 2]);
  });

  it('that was counted before locks nothing through a protection of another kind', () => {
    const loop = new Loop(site).set({ panOutletC: 2, panSheetC: 2 }).run(20);
    change(loop, { failure: { count: 2, cause: 'no-flow' } }).step();
    expect([loop.phase, loop.why]).toEqual(['emptying', 'frost-measured']);
  });
});

describe('a commissioning run', () => {
  it('is kept from step to step, and ends with a protection', () => {
    const loop = restingLoop(site).run(60);
    expect(loop.state.commission).toBeNull();
    loop.ask({ kind: 'commission' });
    expect([loop.last.commissioning?.step, loop.last.lease?.kind]).toEqual(['emptying', 'commission']);
    expect([loop.step().last.commissioning?.step, loop.why]).toEqual(['emptying', 'commissioning-emptying']);
    loop.set({ panOutletC: 2, panSheetC: 2 }).run(15);
    expect([loop.last.commissioning?.step, loop.last.lease, loop.why]).toEqual([
      'ended',
      null,
      'frost-measured',
    ]);
  });
});

describe('the pump', () => {
  it('is known by when it changed, and by its starts of the last hour', () => {
    const loop = restingLoop(site).run(60);
    const before = loop.state.pump;
    expect(loop.step().state.pump).toBe(before);
    change(loop, {
      pump: { ...before, startsMs: [loop.state.runMs - 3_600_000, loop.state.runMs - 60_000] },
    });
    loop.ask({ kind: 'run-pump', minutes: 5 });
    const { runMs } = loop.state;
    expect(loop.state.pump).toEqual({ sinceMs: runMs, startsMs: [runMs - 61_000, runMs], exercising: false });
    expect(loop.step().state.pump.sinceMs).toBe(runMs);
    loop.run(30).ask({ kind: 'rest', minutes: 5 });
    expect(loop.state.pump).toEqual({
      sinceMs: loop.state.runMs,
      startsMs: [runMs - 61_000, runMs],
      exercising: false,
    });
  });

  it('is turned for exercise until it stands again', () => {
    const loop = restingLoop(site, { leastOnS: 0 });
    change(loop, { pump: { ...loop.state.pump, sinceMs: loop.state.runMs - 168 * 3_600_000 } });
    expect(loop.step().state.pump.exercising).toBe(true);
    expect(loop.step(10).phase).toBe('resting');
    expect(loop.state.pump.exercising).toBe(false);
  });

  it('is slowed in circulation where it can be', () => {
    const pump = { ratedFlowLMin: 20, ratedHeadM: 3, ratedPowerW: 50, speedControl: true };
    const loop = circulatingLoop(makeSite('drain-valve', undefined, { pump }))
      .set({ panOutletC: 24 })
      .run(400);
    expect(loop.phase).toBe('circulating');
    expect(loop.last.outputs.pumpFraction).toBeLessThan(1);
    expect(loop.last.outputs.pumpFraction).toBe(loop.state.speed.fraction);
  });

  it('keeps the speed that was kept where it cannot be slowed', () => {
    const loop = circulatingLoop(measured).run(400);
    const speed = { fraction: 1, direction: 1, movedMs: 7 } as const;
    expect(change(loop, { speed }).step().state.speed).toBe(speed);
  });
});

describe('an exchanger', () => {
  const sensors = ['panOutletC', 'panSheetC', 'storeBottomC', 'reservoirC'] as const;
  const reservoir = makeSite('drain-valve', sensors, { plumbing: 'reservoir' });

  it('runs with the circulation where its reservoir is not measured', () => {
    const blind = makeSite('drain-valve', ['panOutletC', 'panSheetC', 'storeBottomC'], {
      plumbing: 'reservoir',
    });
    const loop = emptyLoop(blind).set({ panSheetC: 40, panOutletC: 40 }).until('filling');
    expect(loop.last.outputs.exchangerPumpOn).toBe(false);
    expect(loop.until('circulating').last.outputs.exchangerPumpOn).toBe(true);
  });

  it('runs by its reservoir, in a pan that rests too, but not while a protection acts', () => {
    const loop = circulatingLoop(reservoir).set({ reservoirC: 25 }).run(30);
    expect(loop.last.outputs.exchangerPumpOn).toBe(true);
    loop.set({ reservoirC: 20 }).run(30);
    expect(loop.last.outputs).toMatchObject({ exchangerPumpOn: false, pumpFraction: 1 });
    loop.set({ reservoirC: 25 }).ask({ kind: 'empty' });
    expect(loop.run(10).last.outputs.exchangerPumpOn).toBe(true);
    loop.set({ panSheetC: 2, panOutletC: 2 }).run(10);
    expect([loop.why, loop.last.outputs.exchangerPumpOn]).toEqual(['frost-measured', false]);
  });
});
