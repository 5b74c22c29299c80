import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Clock } from '../../../../controller/clock.ts';
import { type Beat, startBeat } from '../../../../controller/daemon/beat.ts';

/** A clock on the mocked timers. */
const clockOf = (speed: number): Clock => ({
  speed,
  simulated: false,
  nowMs: () => performance.now() * speed,
  steadyMs: () => performance.now() * speed + sleptMs,
});

/** Time that the machine slept through, in which no timer ran. */
let sleptMs = 0;

/** When the device last spoke, on the mocked timers [ms]. */
let spokeAtMs = Number.NEGATIVE_INFINITY;
let beats: number[] = [];
let beat: Beat;
let startMs = 0;

function start(stepMs: number, speed = 1): void {
  startMs = performance.now();
  beat = startBeat({
    clock: clockOf(speed),
    stepMs,
    newestAgeMs: () => (performance.now() - spokeAtMs) * speed,
    beat: () => beats.push(performance.now() - startMs),
  });
}

/** Lets a device speak every `everyMs` from `firstMs` on, for a while. */
function speak(everyMs: number, firstMs: number, durationMs: number): void {
  vi.advanceTimersByTime(firstMs);
  for (let atMs = firstMs; atMs < durationMs; atMs += everyMs) {
    spokeAtMs = performance.now();
    vi.advanceTimersByTime(everyMs);
  }
}

const gaps = () => beats.slice(1).map((atMs, index) => atMs - (beats[index] ?? 0));

beforeEach(() => {
  vi.useFakeTimers();
  spokeAtMs = Number.NEGATIVE_INFINITY;
  sleptMs = 0;
  beats = [];
});
afterEach(() => {
  beat.stop();
  vi.useRealTimers();
});

describe('the beat', () => {
  it('stands on a fixed grid while nothing is heard', () => {
    start(5000);
    vi.advanceTimersByTime(3_600_000);
    expect(beats).toHaveLength(720);
    for (const [index, atMs] of beats.entries()) {
      expect(atMs).toBeGreaterThanOrEqual(index * 5000);
      expect(atMs).toBeLessThan(index * 5000 + 20);
    }
  });

  it.each([0, 300, 1700, 2500, 3600, 4900])(
    'comes right after readings that arrive every step, whenever they began (%i ms)',
    (firstMs) => {
      start(5000);
      speak(5000, firstMs, 100_000);
      const settled = beats.slice(-10).map((atMs) => (((atMs - firstMs) % 5000) + 5000) % 5000);
      for (const afterReadingMs of settled) expect(afterReadingMs).toBeLessThan(30);
      expect(Math.max(...gaps())).toBeLessThanOrEqual(6260);
    },
  );

  it('keeps its pace with a device that speaks more often', () => {
    start(5000);
    speak(1000, 150, 100_000);
    const settled = gaps().slice(1);
    expect(Math.min(...settled)).toBeGreaterThanOrEqual(4500);
    expect(Math.max(...settled)).toBeLessThanOrEqual(5100);
  });

  it('waits for readings that come in several messages', () => {
    start(5000);
    vi.advanceTimersByTime(4900);
    for (let message = 0; message < 5; message++) {
      spokeAtMs = performance.now();
      vi.advanceTimersByTime(5);
    }
    vi.advanceTimersByTime(15);
    expect(beats.at(-1)).toBeGreaterThanOrEqual(4920);
    expect(beats.at(-1)).toBeLessThan(4945);
  });

  it('never lets ten seconds pass for the longest step, whatever is heard', () => {
    start(10_000);
    speak(10_700, 5000, 300_000);
    expect(Math.max(...gaps())).toBeLessThan(10_030);
  });

  it('skips what it missed', () => {
    start(1000);
    vi.advanceTimersByTime(10);
    sleptMs = 60_000;
    vi.advanceTimersByTime(3990);
    expect(beats).toHaveLength(5);
    expect(Math.min(...gaps())).toBeGreaterThan(850);
  });

  it('comes soon when somebody waits, and no oftener than every 50 ms', () => {
    start(5000);
    vi.advanceTimersByTime(1000);
    beat.soon();
    vi.advanceTimersByTime(20);
    expect(beats).toHaveLength(2);
    for (let again = 0; again < 100; again++) {
      beat.soon();
      vi.advanceTimersByTime(1);
    }
    expect(beats).toHaveLength(4);
    vi.advanceTimersByTime(4000);
    expect(beats.at(-1)).toBeGreaterThanOrEqual(5000);
  });

  it('follows a clock that runs faster', () => {
    start(5000, 60);
    vi.advanceTimersByTime(10_000);
    expect(beats.length).toBeGreaterThan(110);
    expect(beats.length).toBeLessThanOrEqual(121);
  });

  it.each([60, 120])('meets the readings of a device on a clock that runs %i times as fast', (speed) => {
    start(5000, speed);
    const everyMs = 5000 / speed;
    speak(everyMs, 0.7 * everyMs, 200 * everyMs);
    const settled = gaps().slice(-50);
    const meanMs = settled.reduce((sum, gapMs) => sum + gapMs, 0) / settled.length;
    expect(meanMs).toBeGreaterThan(0.97 * everyMs);
    expect(meanMs).toBeLessThan(1.03 * everyMs);
  });

  it('does not wait for readings when the clock runs too fast for it', () => {
    start(5000, 1200);
    speak(3, 1, 4000);
    expect(beats.length).toBeGreaterThan(790);
  });

  it('ends', () => {
    start(1000);
    vi.advanceTimersByTime(1500);
    beat.stop();
    const before = beats.length;
    vi.advanceTimersByTime(10_000);
    expect(beats).toHaveLength(before);
  });
});
