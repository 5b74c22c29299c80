import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../sim/identify/least-squares/least-squares.ts';
import { sheetGainWM2, sheetLossWM2K } from '../../sim/physics/collector.ts';
import { stefanBoltzmannWM2K4 } from '../../sim/weather/sky.ts';

/**
 * The steady unglazed form of the ISO 9806 lineage (from memory), written out here by itself:
 * q = eta0 (1 - bu u) G'' - (b1 + b2 u)(Tm - Ta), G'' = G + (eps/alpha)(EL - sigma Ta^4).
 */
function publishedHeatWM2(
  { G, EL, u, Ta, Tm }: Point,
  [eta0 = 0, bu = 0, b1 = 0, b2 = 0]: readonly number[],
): number {
  const net = G + 0.95 * (EL - stefanBoltzmannWM2K4 * (Ta + 273.15) ** 4);
  return eta0 * (1 - bu * u) * net - (b1 + b2 * u) * (Tm - Ta);
}

interface Point {
  readonly G: number;
  readonly EL: number;
  readonly u: number;
  readonly Ta: number;
  readonly Tm: number;
}

const points: Point[] = [0, 400, 800, 1000].flatMap((G) =>
  [0.5, 1.5, 3].flatMap((u) => [10, 20, 35, 50].map((Tm) => ({ G, u, Tm, Ta: 20, EL: 300 + G / 20 }))),
);

/** The collector of the simulated loop at the same point. */
function ownHeatWM2(
  { G, EL, u, Ta, Tm }: Point,
  [eta0 = 0, bu = 0, b1 = 0, b2 = 0]: readonly number[],
): number {
  const c = {
    opticalEfficiency: eta0,
    windOpticalSM: bu,
    stillLossWM2K: b1,
    windLossJM3K: b2,
    emissivityRatio: 0.95,
  };
  const load = { irradianceWM2: G, longWaveWM2: EL, windMs: u, airC: Ta };
  return sheetGainWM2(load, c) - sheetLossWM2K(u, c) * (Tm - Ta);
}

describe('the steady limit of a fit', () => {
  it.each([[[0.9, 0.03, 10, 4]], [[0.86, 0.015, 14, 2.2]]])(
    'gives the coefficients of the published form back: %s',
    (published) => {
      const found = leastSquares({
        residuals: (c) =>
          Float64Array.from(points, (point) => publishedHeatWM2(point, published) - ownHeatWM2(point, c)),
        start: [0.8, 0.02, 12, 3],
        steps: [1e-4, 1e-5, 1e-3, 1e-3],
      });
      if (!found.converged) throw new Error(found.why);
      for (const [i, value] of published.entries())
        expect(Math.abs((found.parameters[i] as number) / value - 1)).toBeLessThan(1e-6);
    },
  );
});
