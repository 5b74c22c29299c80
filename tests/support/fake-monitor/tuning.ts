import type { Absorbed } from '../../../shared-types/absorbed.ts';
import type { DayCurves } from '../../../shared-types/log.ts';
import { defaultSettings, type Settings } from '../../../shared-types/settings.ts';
import type {
  Comparison,
  DayOutcome,
  Estimate,
  LoopFit,
  SweepPoint,
  SweepReport,
} from '../../../shared-types/tuning.ts';
import { testDayCurves } from './history.ts';
import { testSite } from './site.ts';
import { testNowMs } from './snapshot.ts';

const kWh = 3.6e6;
const hourMs = 3_600_000;
const band = (value: number, half: number): Estimate => ({ value, low: value - half, high: value + half });

const outcome = (heatKWh: number, starts: number): DayOutcome => ({
  heatHomeJ: band(heatKWh * kWh, 1.5 * kWh),
  electricityJ: band(0.22 * kWh, 0.01 * kWh),
  pumpRunS: band(21_000, 600),
  starts: band(starts, 1),
  fills: band(1, 0),
  aboveFreezingK: band(8.4, 0.6),
  belowLinerLimitK: band(31, 2),
});

/** Sheet and heat a little higher, so that the two sides can be told apart. */
const warmer = (curves: DayCurves): DayCurves => ({
  ...curves,
  series: { ...curves.series, panOutletC: (curves.series.panOutletC ?? []).map((one) => (one ?? 0) + 4) },
  heatTodayJ: curves.heatTodayJ.map((one) => (one ?? 0) * 1.04),
});

/** A made-up day of light, brightest at noon in UTC. */
function madeUpLight(day: string): Absorbed {
  const valueWM2 = Array.from({ length: 48 }, (_, step) =>
    Math.max(0, 700 * Math.sin((Math.PI * (step - 12)) / 24)),
  );
  return {
    fromMs: Date.parse(`${day}T00:00:00Z`),
    stepMs: hourMs / 2,
    valueWM2,
    lowWM2: valueWM2.map((value) => 0.8 * value),
    highWM2: valueWM2.map((value) => 1.2 * value),
  };
}

/** A made-up comparison: some more heat, two starts fewer. */
export const testComparison = (day: string, tried: Settings, best: boolean): Comparison => ({
  day,
  settingsThen: { ...defaultSettings, fillDelayS: 150 },
  settingsTried: tried,
  logged: { heatHomeJ: 25.2 * kWh, electricityJ: 0.22 * kWh, pumpRunS: 21_600, starts: 5, fills: 1 },
  base: outcome(24.8, 5),
  tried: { ...outcome(25.9, 3), belowLinerLimitK: null },
  heatGainJ: band(1.1 * kWh, 0.4 * kWh),
  bestPossibleJ: best ? 27.6 * kWh : null,
  curves: { base: testDayCurves(day), tried: warmer(testDayCurves(day)) },
  loop: { origin: 'assumed', text: 'No fit is kept for this loop: usual values were taken.' },
  world: {
    irradiance: 'reconstructed',
    air: 'measured',
    wind: 'measured',
    sky: 'assumed',
    draws: 'reconstructed',
  },
  absorbed: madeUpLight(day),
  leftGround: [
    {
      fromMs: testNowMs - hourMs,
      toMs: testNowMs,
      text: 'The pan would have been up to 58 °C, and the log knows it up to 50 °C.',
    },
  ],
  remarks: ['The log pauses from 03:00 to 03:36.'],
});

const point = (
  change: SweepPoint['change'],
  heatKWh: number,
  starts: number,
  front: boolean,
): SweepPoint => ({
  change,
  heatHomeJ: band(heatKWh * kWh, 4 * kWh),
  heatGainJ: band((heatKWh - 150) * kWh, Object.keys(change).length === 0 ? 0 : 1.2 * kWh),
  electricityJ: (1.2 + starts / 100) * kWh,
  starts,
  fills: 9,
  aboveFreezingK: 6.1,
  mostIceKg: 0,
  belowLinerLimitK: null,
  beyondLogS: Object.keys(change).length === 0 ? 0 : 5400,
  onFront: front,
});

/** A made-up sweep over a start difference: seven points, three of them on the front. */
export const testSweep = (days: readonly string[]): SweepReport => ({
  days: [...days],
  settingsInForce: defaultSettings,
  points: [
    point({}, 150, 30, false),
    point({ startDifferenceK: 2 }, 154, 26, true),
    point({ startDifferenceK: 3 }, 152.5, 22, true),
    point({ startDifferenceK: 4 }, 151, 23, false),
    point({ startDifferenceK: 5 }, 149, 20, true),
    point({ startDifferenceK: 6 }, 146, 21, false),
    point({ startDifferenceK: 7 }, 142, 24, false),
  ],
  refused: [{ change: { startDifferenceK: 0.2 }, why: 'Allowed from 1 to 30 K.' }],
  advice: {
    point: 2,
    text: 'Advised: Start difference 3 K. It brings 2.50 kWh more (1.30 to 3.70 kWh), 1.7 % of the heat, with 22 starts instead of 30 and 9 fills instead of 9.',
  },
  remarks: ['One day was left out: half of it is missing from the log.'],
});

/** A made-up fit of three days. */
export const testFit = (days: readonly string[], converged = true): LoopFit => ({
  schemaVersion: 1,
  site: testSite,
  days: [...days],
  converged,
  parameters: [
    { name: 'opticalEfficiency', unit: '1', value: 0.86, standardError: 0.011, heldBecause: null },
    { name: 'stillLossWM2K', unit: 'W/(m2 K)', value: 9.8, standardError: 0.42, heldBecause: null },
    {
      name: 'windLossJM3K',
      unit: 'J/(m3 K)',
      value: 3.5,
      standardError: null,
      heldBecause: 'The wind hardly changed on these days.',
    },
  ],
  sensorErrors: [
    { channel: 'ambientC', kind: 'offset', value: 0.34, standardError: 0.13 },
    { channel: 'irradianceWM2', kind: 'share', value: -0.022, standardError: 0.014 },
  ],
  covariance: [
    [1.2e-4, 1e-4, 0, 0],
    [1e-4, 0.176, 0, 0],
    [0, 0, 0.0169, 0],
    [0, 0, 0, 1.96e-4],
  ],
  residuals: [{ channel: 'panOutletC', samples: 2810, rms: 0.31, mean: -0.02, lagOneCorrelation: 0.62 }],
  verdicts: converged
    ? ['The sun and the losses can be told apart on these days.', 'Wind terms were held.']
    : ['The fit did not come to rest: the pump hardly ran on these days.'],
});
