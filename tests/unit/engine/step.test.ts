import { describe, expect, it } from 'vitest';
import { stepOn } from '../../../controller/engine/index.ts';
import { clearSkyWM2, sunHeightDeg } from '../../../controller/engine/sun/position.ts';
import { circulatingLoop, emptyLoop, Loop, makeSite, quickSettings, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');

function change(loop: Loop, slots: Partial<Loop['state']>): Loop {
  loop.state = { ...loop.state, ...slots };
  return loop;
}

describe('a step from a state that is known to be sound', () => {
  const input = (loop: Loop) =>
    ({
      ...{ nowMs: loop.nowMs, elapsedMs: 5000, localDay: loop.localDay, feedback: null, request: null },
      readings: { panOutletC: { value: 27, ageMs: 100 }, storeBottomC: { value: 20, ageMs: 100 } },
    }) as const;

  it('does not look at it again', () => {
    const loop = circulatingLoop(site);
    const odd = { ...loop.state, version: 1 as never };
    const { decision } = stepOn(odd, input(loop), site, quickSettings);
    expect(decision.reasons.phase.code).toMatch(/^circulating/);
    expect(change(loop, { version: 1 as never }).step().why).toBe('internal-error');
  });

  it('falls safe all the same where it cannot be carried out', () => {
    const loop = circulatingLoop(site);
    const { decision } = stepOn(null as never, input(loop), site, quickSettings);
    expect(decision.reasons.phase.code).toBe('internal-error');
  });

  it('falls safe rather than to set what no output may be', () => {
    const loop = circulatingLoop(site);
    const state = { ...loop.state, speed: { ...loop.state.speed, fraction: 1.01 } };
    const { decision } = stepOn(state, input(loop), site, quickSettings);
    expect(decision.reasons.phase.code).toBe('internal-error');
    expect(decision.outputs.pumpFraction).toBe(0);
  });
});

describe('time', () => {
  it('goes on by what has passed, seen or not', () => {
    const loop = circulatingLoop(site);
    const { runMs } = loop.state;
    const { pumpRunS } = loop.last.meter.total;
    expect(loop.step(5).state.runMs).toBe(runMs + 5000);
    expect(loop.last.meter.total.pumpRunS).toBe(pumpRunS + 5);
    expect(loop.step(3000).state.runMs).toBe(runMs + 3_005_000);
    expect(loop.last.meter.total.pumpRunS).toBe(pumpRunS + 5);
    expect(loop.last.outputs.pumpFraction).toBe(0);
    expect(loop.step(null).state.runMs).toBe(runMs + 3_005_000);
    expect(loop.step(null).last.phaseForMs).toBe(0);
    expect(loop.step(7).last.phaseForMs).toBe(7000);
  });

  it('that was not seen lets the sun follow the calendar at once', () => {
    const loop = circulatingLoop(site);
    const { atMs } = loop.state.sunClock;
    loop.nowMs += 6 * 3_600_000;
    expect(loop.step(5).state.sunClock.atMs).toBe((atMs ?? 0) + 5000);
    expect(loop.step(null).state.sunClock.atMs).toBe(loop.nowMs);
  });

  it('of which no calendar tells has no sun', () => {
    const loop = new Loop(
      makeSite('drain-valve', undefined, { location: { ...site.location, longitudeDeg: 180 } }),
    );
    loop.nowMs = -1e9;
    loop.until('empty').run(30);
    expect(loop.state.sunClock.atMs).toBeNull();
    expect(loop.state.harvest).toMatchObject({ dryClearWM2: 0, dayJ: null });
    loop.nowMs = Date.UTC(2031, 5, 21);
    loop.step();
    const height = sunHeightDeg(loop.nowMs, loop.site.location);
    expect(loop.state.harvest.dryClearWM2).toBe(clearSkyWM2(height));
    expect(height).toBeGreaterThan(60);
  });

  it('of another local day begins its books', () => {
    const corner = emptyLoop(makeSite('corner'));
    const { harvest, meter } = corner.state;
    const total = { ...meter.total, starts: 4 };
    change(corner, { harvest: { ...harvest, gaps: 3 }, meter: { ...meter, total } });
    const books = ({ state }: Loop) => [state.harvest.gaps, state.airLows.daysC, state.meter.dayStart.starts];
    expect(books(corner.step())).toEqual([3, [], 0]);
    corner.localDay = '2031-06-22';
    expect(books(corner.step())).toEqual([0, [15], 4]);
    corner.localDay = 'someday';
    expect(corner.step().state).toMatchObject({ localDay: '2031-06-22', airLows: { daysC: [15] } });
  });
});

describe('a pump that is seen to run although it is off', () => {
  it('is remembered from the step on which it is seen', () => {
    const loop = restingLoop(site).run(60);
    expect(loop.state.flow.runsOnMs).toBeNull();
    loop.feedback = { pumpFraction: 1, drainOpen: false, ageMs: 0 };
    const { runMs } = loop.step().state;
    expect(loop.step().state.flow.runsOnMs).toBe(runMs);
    loop.feedback = null;
    expect(loop.step().state.flow.runsOnMs).toBeNull();
  });

  it('lets no time prove that the pan is empty', () => {
    const loop = new Loop(site).run(50);
    loop.feedback = { pumpFraction: 1, drainOpen: true, ageMs: 0 };
    const { drainedMs } = loop.step().state.water;
    expect(drainedMs).toBeGreaterThan(0);
    expect(loop.step().state.water.drainedMs).toBe(drainedMs);
  });
});

describe('a request', () => {
  it('for automatic lifts a lock at once', () => {
    const locked = restingLoop(site).run(60);
    change(locked, { failure: { count: 2, cause: 'no-flow' } });
    const { state } = locked;
    expect([locked.step().phase, locked.why]).toEqual(['stopped', 'fill-failed-locked']);
    locked.ask({ kind: 'automatic' });
    expect([locked.phase, locked.state.failure.count]).toEqual(['emptying', 0]);
    change(locked, state).ask({ kind: 'automatic' });
    expect([locked.phase, locked.state.failure.count]).toEqual(['resting', 0]);
  });

  it('lifts nothing else of what a protection says, nor calls for one, before the next step', () => {
    const corner = restingLoop(makeSite('corner')).run(60);
    change(corner, { airLows: { todayC: 2, daysC: [] } }).step();
    expect(corner.ask({ kind: 'empty' })).toMatchObject({ accepted: true });
    expect([corner.state.water.level, corner.why]).toEqual(['empty', expect.not.stringContaining('season')]);
    expect(corner.step().why).toBe('frost-season');
  });

  it('is told with what is left of its lease', () => {
    const loop = restingLoop(site).run(60);
    loop.ask({ kind: 'rest', minutes: 5 });
    expect(loop.last.lease).toEqual({ kind: 'rest', remainingMs: 300_000 });
    expect(loop.step(5).last.lease).toEqual({ kind: 'rest', remainingMs: 295_000 });
    expect(loop.last.answer).toBeNull();
  });
});
