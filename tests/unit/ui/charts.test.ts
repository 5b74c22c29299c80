import { describe, expect, test } from 'vitest';
import { bandRange } from '../../../desktop/ui/charts/band-range.ts';
import { datasetsOf, gapMs } from '../../../desktop/ui/charts/datasets.ts';
import { mergedPhases } from '../../../desktop/ui/charts/merged-phases.ts';
import { ribbonPieces } from '../../../desktop/ui/charts/ribbon-pieces.ts';
import type { Band } from '../../../desktop/ui/charts/series.ts';
import { drawnSeries, presentSeries } from '../../../desktop/ui/charts/series.ts';
import { tableRows, tableStepMs } from '../../../desktop/ui/charts/table-rows.ts';
import { ticksOn, timeTicks, zoneOffset } from '../../../desktop/ui/charts/time-ticks.ts';
import type { DayCurves, PhaseSpan } from '../../../shared-types/log.ts';

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;

const curves: DayCurves = {
  day: '2031-06-21',
  atMs: [0, minuteMs, 2 * minuteMs, 40 * minuteMs],
  series: { panOutletC: [10, null, 30, 40], panSheetC: [null, null, null, null], windMs: [1, 2, 3, 4] },
  pumpFraction: [0, 1, 1, 0],
  heatTodayJ: [0, 3.6e6, 7.2e6, 7.2e6],
  phases: [
    { phase: 'empty', reason: 'emptied', fromMs: 0, toMs: minuteMs },
    { phase: 'filling', reason: 'filling-for-heat', fromMs: minuteMs, toMs: 40 * minuteMs },
  ],
  events: [],
};

const rangeOf = (band: Band, values: readonly (number | null)[]) =>
  bandRange(band, [{ data: values.map((y) => ({ y })) }]);

describe('curves', () => {
  test('of which there is no value are not offered', () => {
    expect(presentSeries(curves)).toEqual(['panOutletC', 'windMs', 'pumpFraction', 'heatTodayJ']);
  });
  test('are drawn by their first choice unless a person chose otherwise', () => {
    const present = presentSeries(curves);
    expect(drawnSeries(present, [], [])).toEqual(['panOutletC']);
    expect(drawnSeries(present, ['panOutletC'], ['windMs'])).toEqual(['windMs']);
  });
  test('keep null where nothing was read, and stand in the chosen units', () => {
    const [outlet, heat] = datasetsOf(
      curves,
      ['panOutletC', 'heatTodayJ'],
      { temperature: 'F', heat: 'kWh' },
      'light',
    );
    expect(outlet?.data.map((point) => point.y)).toEqual([50, null, 86, 104]);
    expect(heat?.data.map((point) => point.y)).toEqual([0, 1, 2, 2]);
  });
  test('break at a pause in the log and nowhere else', () => {
    expect(gapMs(curves.atMs)).toBe(5 * minuteMs);
    // A span thinned to one point in ten minutes has no pause at each of them.
    expect(gapMs([0, 10, 20, 30].map((n) => n * minuteMs))).toBe(40 * minuteMs);
    expect(gapMs([])).toBe(5 * minuteMs);
  });
});

describe('the table of curves', () => {
  test('has some two dozen rows for any span', () => {
    expect(tableStepMs(24 * hourMs)).toBe(hourMs);
    expect(tableStepMs(6 * hourMs)).toBe(15 * minuteMs);
    expect(tableStepMs(2 * hourMs)).toBe(5 * minuteMs);
  });
  test('takes the nearest values, and leaves out what was not logged', () => {
    const rows = tableRows(curves, ['panOutletC'], 10 * minuteMs);
    expect(rows).toEqual([
      { atMs: 0, values: [10] },
      { atMs: 40 * minuteMs, values: [40] },
    ]);
  });
});

describe('the ribbon of phases', () => {
  test('shows the parts that lie in the window', () => {
    const pieces = ribbonPieces(curves.phases, { fromMs: 0, toMs: 2 * minuteMs });
    expect(pieces.map(({ start, length }) => [start, length])).toEqual([
      [0, 0.5],
      [0.5, 0.5],
    ]);
    expect(ribbonPieces(curves.phases, { fromMs: 50 * minuteMs, toMs: hourMs })).toEqual([]);
  });
});

describe('ticks of the time axis', () => {
  const azores = zoneOffset('Atlantic/Azores');
  const local = (atMs: number) => new Date(atMs + azores(atMs)).toISOString().slice(11, 16);
  test('stand at round hours of the site in winter and in summer', () => {
    for (const month of [0, 6]) {
      const fromMs = Date.UTC(2031, month, 10, 0, 7);
      const ticks = timeTicks(fromMs, fromMs + 24 * hourMs, 12, azores);
      expect(ticks.length).toBeGreaterThanOrEqual(8);
      expect(ticks.length).toBeLessThanOrEqual(13);
      for (const tick of ticks) expect(local(tick)).toMatch(/^\d[02468]:00$/);
    }
  });
  test('stay round over the day on which the clock goes forward', () => {
    const fromMs = Date.UTC(2031, 2, 30, 1);
    for (const tick of timeTicks(fromMs - 6 * hourMs, fromMs + 17 * hourMs, 12, azores))
      expect(local(tick)).toMatch(/^\d[02468]:00$/);
  });
  test('stand at round times where the zone is a quarter of an hour off', () => {
    const kathmandu = zoneOffset('Asia/Kathmandu');
    const fromMs = Date.UTC(2031, 5, 21);
    const ticks = timeTicks(fromMs, fromMs + 6 * hourMs, 8, kathmandu);
    expect(ticks).toHaveLength(6);
    for (const tick of ticks) expect((tick + kathmandu(tick)) % hourMs).toBe(0);
  });
  test.each([
    [1000, 22],
    [240, 12],
    [44, 12],
    [43, 6],
  ])(
    'keep half a label from the end on %d px, so that the curves reach as far as the ribbon',
    (width, last) => {
      const ticks = ticksOn({ min: 0, max: 24 * hourMs, width }, () => 0);
      expect(ticks[0]).toBe(0);
      expect(ticks.at(-1)).toBe(last * hourMs);
      expect(width * (1 - last / 24)).toBeGreaterThanOrEqual(22);
    },
  );
  test('are never more than there is room for', () => {
    for (const hours of [0.2, 1, 3, 24, 48, 400])
      expect(timeTicks(0, hours * hourMs, 8, () => 0).length).toBeLessThanOrEqual(9);
  });
});

describe('the axis of a band', () => {
  test('stands on nought in spite of noise below it', () => {
    expect(rangeOf('flow', [-0.1, 0, 0.1, null])).toEqual({ min: 0, suggestedMax: 5 });
    expect(rangeOf('radiation', [-15, 900]).min).toBe(0);
  });
  test('shows what is truly below nought', () => {
    expect(rangeOf('flow', [-8, 12]).min).toBeUndefined();
    expect(rangeOf('heat', [-0.5, 2]).min).toBeUndefined();
  });
  test('of temperatures follows the data', () => {
    expect(rangeOf('temperature', [40, 50])).toEqual({ min: undefined, suggestedMax: undefined });
  });
});

describe('phases in short', () => {
  const second = 1000;
  const span = (phase: PhaseSpan['phase'], reason: PhaseSpan['reason'], fromS: number, toS: number) => ({
    phase,
    reason,
    fromMs: fromS * second,
    toMs: toS * second,
  });
  test('are one from the first to the last reason, named by the one that held the longest', () => {
    const merged = mergedPhases([
      span('resting', 'resting-no-gain', 0, 5),
      span('resting', 'waiting-start-difference', 5, 600),
      span('resting', 'waiting-start-delay', 600, 660),
      span('circulating', 'circulating-for-heat', 660, 900),
      span('resting', 'resting-no-gain', 900, 905),
    ]);
    expect(merged).toEqual([
      span('resting', 'waiting-start-difference', 0, 660),
      span('circulating', 'circulating-for-heat', 660, 900),
      span('resting', 'resting-no-gain', 900, 905),
    ]);
  });
  test('add up a reason that came more than once', () => {
    const merged = mergedPhases([
      span('resting', 'resting-no-gain', 0, 40),
      span('resting', 'waiting-start-difference', 40, 100),
      span('resting', 'resting-no-gain', 100, 140),
    ]);
    expect(merged.map(({ reason }) => reason)).toEqual(['resting-no-gain']);
  });
  test('are not drawn together over a pause of the log', () => {
    const spans = [span('empty', 'emptied', 0, 100), span('empty', 'emptied', 900, 1000)];
    expect(mergedPhases(spans)).toEqual(spans);
  });
});
