import { describe, expect, it } from 'vitest';
import type { SunClock } from '../../../controller/engine/state.ts';
import { unknownSunClock, updateSunClock } from '../../../controller/engine/sun/clock.ts';

const noonMs = Date.UTC(2031, 5, 21, 12);
const minuteMs = 60_000;

/** Steps of a minute, under a calendar that is ahead of the steady time by what a rule says. */
function run(minutes: number, aheadMs: (minute: number) => number): SunClock {
  let clock: SunClock = { ...unknownSunClock, atMs: noonMs };
  for (let minute = 1; minute <= minutes; minute++) {
    const nowMs = noonMs + minute * minuteMs + aheadMs(minute);
    clock = updateSunClock(clock, nowMs, minuteMs, minute * minuteMs);
  }
  return clock;
}
const steadyMs = (minutes: number) => noonMs + minutes * minuteMs;

describe('the clock of the sun', () => {
  it('takes the calendar when it begins, and when nobody knows how long nobody looked', () => {
    expect(updateSunClock(unknownSunClock, noonMs, 5000, 0).atMs).toBe(noonMs);
    expect(updateSunClock({ ...unknownSunClock, atMs: 5 }, noonMs, null, 0).atMs).toBe(noonMs);
  });

  it('knows nothing without a calendar, and goes on without one', () => {
    expect(updateSunClock(unknownSunClock, 0, 5000, 0)).toBe(unknownSunClock);
    expect(updateSunClock({ ...unknownSunClock, atMs: noonMs }, 0, 5000, 0).atMs).toBe(noonMs + 5000);
    expect(updateSunClock({ ...unknownSunClock, atMs: noonMs }, 0, null, 0).atMs).toBe(noonMs);
  });

  it('runs on steady time while the calendar is less than two minutes apart', () => {
    expect(run(90, () => 119_999)).toEqual({ ...unknownSunClock, atMs: steadyMs(90) });
  });

  it('minds a calendar that is two minutes apart, and one that went two minutes further', () => {
    const apart = { atMs: noonMs, apartMs: 600_000, apartSinceMs: 7 };
    const seen = (aheadMs: number) => updateSunClock(apart, noonMs + 5000 + aheadMs, 5000, 9);
    expect(seen(120_000)).toMatchObject({ apartMs: 120_000, apartSinceMs: 9 });
    expect(seen(719_999)).toMatchObject({ apartMs: 600_000, apartSinceMs: 7 });
    expect(seen(720_000)).toMatchObject({ apartMs: 720_000, apartSinceMs: 9 });
    expect(seen(480_000)).toMatchObject({ apartMs: 480_000, apartSinceMs: 9 });
  });

  it('follows a calendar that keeps to another time for an hour, not before', () => {
    expect(run(60, () => 7_200_000)).toMatchObject({ atMs: steadyMs(60), apartMs: 7_200_000 });
    expect(run(61, () => 7_200_000)).toEqual({ ...unknownSunClock, atMs: steadyMs(61) + 7_200_000 });
    expect(run(61, () => -7_200_000).atMs).toBe(steadyMs(61) - 7_200_000);
  });

  it('begins the hour anew when the calendar changes its mind', () => {
    const wandering = (minute: number) => (minute <= 40 ? 7_200_000 : 3_600_000);
    expect(run(100, wandering)).toMatchObject({ atMs: steadyMs(100), apartSinceMs: 41 * minuteMs });
    expect(run(101, wandering).atMs).toBe(steadyMs(101) + 3_600_000);
  });

  it('follows no calendar that steps to and fro', () => {
    expect(run(600, (minute) => (minute % 30 < 15 ? 86_400_000 : -86_400_000)).atMs).toBe(steadyMs(600));
  });
});
