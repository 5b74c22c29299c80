import { describe, expect, it } from 'vitest';
import { circulatingLoop, emptyLoop, makeSite, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');
const run = { kind: 'run-pump', minutes: 10 } as const;

describe('a request', () => {
  it('to run the pump fills, circulates, and ends by itself', () => {
    const loop = emptyLoop(site).run(60);
    expect(loop.ask(run)).toMatchObject({ accepted: true, code: 'accepted', leaseMs: 600_000 });
    expect([loop.phase, loop.why]).toEqual(['filling', 'operator-run']);
    expect(loop.last.lease).toEqual({ kind: 'run-pump', remainingMs: 600_000 });
    loop.until('circulating').run(300);
    expect([loop.phase, loop.why]).toEqual(['circulating', 'operator-run']);
    loop.until('resting', 600);
    expect(loop.last.lease).toBeNull();
  });

  it('waits for the least times like the loop itself', () => {
    const loop = restingLoop(site, { leastOffS: 120, leastOnS: 120 });
    loop.ask(run);
    expect([loop.phase, loop.why]).toEqual(['resting', 'waiting-least-off']);
    loop.until('circulating');
    loop.ask({ kind: 'rest', minutes: 5 });
    expect([loop.phase, loop.why]).toEqual(['circulating', 'circulating-least-on']);
    loop.until('resting');
  });

  it('to stop while the pan becomes full is met once the pump may stop', () => {
    const loop = emptyLoop(site).set({ panSheetC: 40 }).until('filling');
    loop.settings = { ...loop.settings, leastOnS: 300 };
    loop.ask({ kind: 'rest', minutes: 60 });
    loop.until('circulating');
    expect(loop.why).toBe('circulating-least-on');
    loop.until('resting');
    expect(loop.why).toBe('operator-rest');
  });

  it('to rest keeps the water in the pan however warm it is', () => {
    const loop = circulatingLoop(site).run(60);
    expect(loop.ask({ kind: 'rest', minutes: 20 })).toMatchObject({ accepted: true });
    loop.run(1150);
    expect([loop.phase, loop.why]).toEqual(['resting', 'operator-rest']);
    loop.until('circulating', 200);
  });

  it('to empty empties, and keeps empty for an hour', () => {
    const loop = circulatingLoop(site).set({ panSheetC: 40, panOutletC: 40 }).run(60);
    expect(loop.ask({ kind: 'empty' })).toMatchObject({ accepted: true, leaseMs: 3_660_000 });
    expect([loop.phase, loop.why]).toEqual(['emptying', 'operator-empty']);
    loop.until('empty').run(3500);
    expect([loop.phase, loop.why]).toEqual(['empty', 'operator-empty']);
    loop.until('filling', 300);
  });

  it('for automatic ends what was asked before', () => {
    const loop = restingLoop(site).run(60);
    expect(loop.ask({ kind: 'automatic' })).toMatchObject({ accepted: false, code: 'nothing-to-do' });
    loop.ask(run);
    expect(loop.ask({ kind: 'automatic' })).toMatchObject({ accepted: true });
    expect(loop.last.lease).toBeNull();
  });

  it.each([
    [{ ageMs: 10_001 }, 'expired'],
    [{ ageMs: -5001 }, 'from-the-future'],
    [{ id: 'short' }, 'malformed'],
    [{ id: 7 }, 'malformed'],
    [{ lifeMs: 999 }, 'malformed'],
    [{ lifeMs: 60_001 }, 'malformed'],
    [{ ageMs: null }, 'malformed'],
    [{ operation: { kind: 'open-sesame' } }, 'malformed'],
    [{ operation: { kind: 'run-pump', minutes: 121 } }, 'malformed'],
    [{ operation: { kind: 'rest', minutes: 0 } }, 'malformed'],
    [{ operation: { kind: 'acknowledge', alarm: 'toString' } }, 'malformed'],
    [{ operation: { kind: 'shelve', alarm: 'dry-running', minutes: 4 } }, 'malformed'],
    [{ operation: { kind: 'acknowledge', alarm: 'dry-running' } }, 'no-such-alarm'],
    [{ operation: { kind: 'shelve', alarm: 'dry-running', minutes: 5 } }, 'no-such-alarm'],
  ])('changed by %o is refused: %s', (changes, code) => {
    const loop = restingLoop(site).run(60);
    expect(loop.ask(run, changes)).toMatchObject({ accepted: false, code });
    expect(loop.last.lease).toBeNull();
    expect(loop.phase).toBe('resting');
  });

  it.each([[{ ageMs: 10_000 }], [{ ageMs: -5000 }], [{ lifeMs: 1000 }], [{ lifeMs: 60_000 }]])(
    'with %o is just in time',
    (changes) => {
      expect(restingLoop(site).run(60).ask(run, changes)).toMatchObject({ accepted: true });
    },
  );

  it('is heard once', () => {
    const loop = restingLoop(site).run(60);
    expect(loop.ask(run, { id: 'the-same-one' })).toMatchObject({ accepted: true });
    loop.ask({ kind: 'automatic' });
    expect(loop.ask(run, { id: 'the-same-one' })).toMatchObject({ accepted: false, code: 'repeated' });
    loop.step(null);
    expect(loop.ask(run, { id: 'the-same-one' })).toMatchObject({ code: 'repeated' });
  });

  it('is refused where the loop cannot do it', () => {
    const pumpStop = circulatingLoop(makeSite('pump-stop'));
    expect(pumpStop.ask({ kind: 'rest', minutes: 5 })).toMatchObject({ code: 'not-possible-here' });
    expect(circulatingLoop(makeSite('corner')).ask({ kind: 'empty' })).toMatchObject({
      code: 'not-possible-here',
    });
  });

  it('is refused while a protection forbids it, but not when both ask the same', () => {
    const frost = restingLoop(site).set({ panSheetC: 3 }).run(20);
    expect(frost.ask(run)).toMatchObject({ code: 'hazard-forbids' });
    expect(frost.ask({ kind: 'rest', minutes: 5 })).toMatchObject({ code: 'hazard-forbids' });
    expect(frost.ask({ kind: 'empty' })).toMatchObject({ accepted: true });
    const full = restingLoop(site).set({ storeTopC: 61 }).run(20);
    expect(full.ask({ kind: 'rest', minutes: 5 })).toMatchObject({ accepted: true });
    const hot = restingLoop(site).set({ panSheetC: 75 }).run(20);
    expect(hot.ask(run)).toMatchObject({ accepted: true });
  });

  it('gives way to a protection that comes later, and goes on after it', () => {
    const loop = restingLoop(site).run(60);
    loop.ask({ kind: 'run-pump', minutes: 60 });
    loop.set({ storeTopC: 61 }).run(20);
    expect([loop.phase, loop.why]).toEqual(['resting', 'store-limit']);
    loop.set({ storeTopC: 50 }).until('circulating');
    expect(loop.why).toBe('operator-run');
  });

  it('ends with a restart of the controller', () => {
    const loop = restingLoop(site).run(60);
    loop.ask(run);
    expect(loop.step(null).last.lease).toBeNull();
  });

  it('from nobody has no answer', () => {
    expect(restingLoop(site).last.answer).toBeNull();
  });
});
