import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thinCurves } from '../../../desktop/host/downsample.ts';
import { dayCurvesSchema } from '../../../shared-types/log.ts';
import { curves } from './samples.ts';

const outlet = (thin: ReturnType<typeof thinCurves>) => thin.series.panOutletC ?? [];

describe('thinCurves', () => {
  it('leaves curves alone that are short enough', () => {
    const short = curves(3000, (row) => row);
    expect(thinCurves(short, 3000)).toBe(short);
  });

  it('keeps a spike of a single row, up or down', () => {
    for (const spike of [99, -99]) {
      const thin = thinCurves(
        curves(17_280, (row) => (row === 8001 ? spike : 20)),
        3000,
      );
      expect(outlet(thin).filter((value) => value === spike)).toHaveLength(1);
    }
  });

  it('shows a gap that is wider than a bucket, and closes one within a bucket', () => {
    const thin = thinCurves(
      curves(10_000, (row) => (row >= 2000 && row < 2040 ? null : 20)),
      1000,
    );
    expect(outlet(thin)).toContain(null);
    const closed = thinCurves(
      curves(10_000, (row) => (row === 2005 ? null : 20)),
      1000,
    );
    expect(outlet(closed)).not.toContain(null);
  });

  it('keeps a pause between rows as wide as it was', () => {
    const paused = curves(10_000, (row) => row);
    paused.atMs = paused.atMs.map((atMs, row) => (row < 5005 ? atMs : atMs + 3_600_000));
    const { atMs } = thinCurves(paused, 1000);
    expect(Math.max(...atMs.slice(1).map((at, row) => at - (atMs[row] ?? at)))).toBeGreaterThan(
      3_600_000 - 50_000,
    );
  });

  it('keeps order, both extremes, both ends, every column as long as the instants, and stays within its length', () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.integer({ min: -400, max: 1200 })), { minLength: 2, maxLength: 400 }),
        fc.integer({ min: 2, max: 100 }),
        (values, most) => {
          const full = curves(values.length, (row) => values[row] ?? null);
          const thin = thinCurves(full, most);
          const good = (column: readonly (number | null)[]) => column.filter((value) => value !== null);
          dayCurvesSchema.parse(thin);
          expect(thin.atMs.length).toBeLessThanOrEqual(Math.max(most, 2));
          expect(thin.atMs).toEqual([...new Set(thin.atMs)].sort((a, b) => a - b));
          expect([thin.atMs[0], thin.atMs.at(-1)]).toEqual([full.atMs[0], full.atMs.at(-1)]);
          expect(Math.max(...good(outlet(thin)))).toBe(Math.max(...good(outlet(full))));
          expect(Math.min(...good(outlet(thin)))).toBe(Math.min(...good(outlet(full))));
          for (const column of [outlet(thin), thin.pumpFraction, thin.heatTodayJ])
            expect(column).toHaveLength(thin.atMs.length);
          expect(thin.heatTodayJ).toEqual(good(thin.heatTodayJ).toSorted((a, b) => a - b));
        },
      ),
    );
  });
});
