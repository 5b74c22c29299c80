import { describe, expect, it } from 'vitest';
import { localDaysOf } from '../../../controller/log/local-day.ts';
import { circulatingLoop, makeSite } from './rig.ts';

const hourMs = 3_600_000;

describe('the nights in which the clocks change', () => {
  it.each([
    ['forward', Date.UTC(2031, 2, 29, 12), 23],
    ['back', Date.UTC(2031, 9, 25, 12), 25],
  ])('set %s begin one day, whose totals begin with it, and decide nothing', (_way, startMs, dayHours) => {
    const days = localDaysOf('Europe/Berlin');
    const run = (dayOf: (atMs: number) => string) => {
      const loop = circulatingLoop(makeSite('drain-valve'));
      loop.nowMs = startMs;
      const begun: number[] = [];
      for (let step = 0; step < 48 * 60; step++) {
        const day = dayOf(loop.nowMs + 60_000);
        if (day !== loop.localDay) begun.push(loop.nowMs + 60_000);
        loop.localDay = day;
        loop.step(60);
      }
      return { begun, loop };
    };
    const there = run((atMs) => days.dayOf(atMs));
    const always = run(() => '2031-06-21');
    const { begun } = there;
    expect(((begun[2] as number) - (begun[1] as number)) / hourMs).toBe(dayHours);
    expect(begun).toHaveLength(3);
    const outcome = ({ loop }: typeof there) =>
      loop.decisions.map(({ phase, outputs, reasons, meter }) => [
        phase,
        outputs,
        reasons.phase.code,
        meter.total,
      ]);
    expect(outcome(there)).toEqual(outcome(always));
    const { total, today } = there.loop.last.meter;
    expect(today.pumpRunS).toBeLessThan(total.pumpRunS);
  });
});
