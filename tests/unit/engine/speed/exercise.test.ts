import { describe, expect, it } from 'vitest';
import { emptyLoop, type Loop, makeSite, restingLoop } from '../rig.ts';

const site = makeSite('drain-valve');
const hourMs = 3_600_000;

/** The same loop, had its pump stood for so many hours. */
function idle(loop: Loop, hours: number): Loop {
  loop.state = { ...loop.state, pump: { ...loop.state.pump, sinceMs: loop.state.runMs - hours * hourMs } };
  return loop;
}

describe('a pump that has long stood', () => {
  it('is turned briefly under a full pan, with the drain shut, and stands again', () => {
    const loop = idle(restingLoop(site, { leastOnS: 0 }), 168).step();
    expect([loop.phase, loop.why]).toEqual(['circulating', 'exercising-pump']);
    expect(loop.last.outputs).toMatchObject({ pumpFraction: 1, drainOpen: false });
    expect(loop.last.reasons.phase.text).toContain('168 h');
    expect([loop.step(5).phase, loop.step(4).phase, loop.step(1).phase]).toEqual([
      'circulating',
      'circulating',
      'resting',
    ]);
    expect(loop.run(600).phase).toBe('resting');
  });

  it('runs its least time all the same', () => {
    const loop = idle(restingLoop(site), 168).step().run(25);
    expect(loop.phase).toBe('circulating');
    expect(loop.run(5).phase).toBe('resting');
  });

  it('is left alone before', () => {
    expect(idle(restingLoop(site), 167.9).step().phase).toBe('resting');
  });

  it('waits for a pan that is close to the store, but not for ever', () => {
    for (const panC of [14.9, 25.1]) {
      const loop = restingLoop(site).set({ panOutletC: panC, panSheetC: panC, panInletC: panC }).run(15);
      expect(idle(loop, 168).step().why).not.toBe('exercising-pump');
      expect(idle(loop, 335).step().why).not.toBe('exercising-pump');
      expect(idle(loop, 336).step().why).toBe('exercising-pump');
    }
    for (const panC of [15, 25]) {
      const loop = restingLoop(site).set({ panOutletC: panC, panSheetC: panC, panInletC: panC }).run(15);
      expect(idle(loop, 168).step().why).toBe('exercising-pump');
    }
  });

  it('is never turned when the pan is empty or not known to be full', () => {
    expect(idle(emptyLoop(site), 400).step().phase).toBe('empty');
    expect(idle(emptyLoop(makeSite('corner')), 400).step().phase).toBe('resting');
  });

  it('is never turned near frost', () => {
    const cold = (panC: number) =>
      idle(
        restingLoop(site)
          .set({ panOutletC: panC, panSheetC: panC, panInletC: panC, storeBottomC: panC })
          .run(15),
        168,
      );
    expect(cold(7).step().why).toBe('exercising-pump');
    expect(cold(6.9).step().why).not.toBe('exercising-pump');
    const latched = cold(7);
    latched.state = { ...latched.state, frost: { ...latched.state.frost, latched: 'frost-measured' } };
    expect(latched.step().why).not.toBe('exercising-pump');
  });

  it('goes on when it brings heat home by then', () => {
    const loop = idle(restingLoop(site, { leastOnS: 0 }), 168).step();
    loop.set({ panOutletC: 27, panSheetC: 27 }).run(30);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'circulating-for-heat']);
  });
});
