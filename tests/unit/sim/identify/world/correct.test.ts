import { describe, expect, test } from 'vitest';
import type { PhaseName } from '../../../../../shared-types/engine.ts';
import {
  correctDraw,
  correctSky,
  nothingUnknown,
  type Steps,
  type Unknowns,
} from '../../../../../sim/identify/world/correct.ts';
import type { SkyColumns } from '../../../../../sim/identify/world/sky-columns.ts';
import type { LoggedSpan } from '../../../../../sim/identify/world/span.ts';
import { fromMs, minuteMs } from './span-rig.ts';

const [from, to] = [60, 70];
type Phases = readonly (readonly [number, PhaseName])[];

const spanWith = (phases: Phases) =>
  ({
    site: { store: { volumeL: 3600 } },
    minutes: { fromMs },
    phases: phases.map(([minute, phase]) => ({ fromMs: fromMs + minute * minuteMs, phase })),
  }) as unknown as LoggedSpan;

interface Case {
  readonly panC?: number;
  readonly unknowns?: Partial<Unknowns>;
  readonly steps?: Partial<Steps>;
  readonly lightWM2?: number;
  readonly phases?: Phases;
}

/** A pan that stands at 20 °C, by 10 K for all the sun that there may be, and by half of what the air is warmer. */
function corrected({
  panC = 30,
  unknowns = { factor: 1, airK: 0 },
  steps = { factor: 0.3, airK: 0 },
  lightWM2 = 500,
  phases = [[0, 'circulating']],
}: Case) {
  return correctSky({
    span: spanWith(phases),
    sky: {
      irradianceWM2: new Float64Array(100).fill(lightWM2),
      sun: { zenithDeg: new Float64Array(100).fill(40) },
    } as unknown as SkyColumns,
    from,
    to,
    unknowns: { ...nothingUnknown, ...unknowns },
    steps: { factor: 0, airK: 0, ...steps },
    seen: { panC, bottomC: Number.NaN },
    attempt: ({ factor, airK }) => ({ panC: 20 + 10 * factor + 0.5 * airK, bottomC: 0 }),
  });
}

describe('sun and air with which the pan goes where it was seen', () => {
  test('stay where they are while it does', () => {
    const { unknowns, unlikely } = corrected({});
    expect(unknowns).toMatchObject({ factor: 1, airK: 0 });
    expect(unlikely).toBeCloseTo(Math.log(0.15 ** 2 + 3 ** 2), 12);
  });

  test('rise by what a Kalman filter gives: nearly all of what is missing, where the thermometer is sure', () => {
    const { unknowns, unlikely } = corrected({ panC: 31 });
    const variance = 0.15 ** 2 + (0.3 * 10) ** 2;
    expect(unknowns.factor).toBeCloseTo(1 + (0.3 ** 2 * 10) / variance, 9);
    expect(unlikely).toBeCloseTo(1 / variance + Math.log(variance), 9);
  });

  test('share what is missing by how freely they walk', () => {
    const { unknowns } = corrected({ panC: 31, steps: { factor: 0.1, airK: 1 } });
    const variance = 0.15 ** 2 + 1 ** 2 + 0.5 ** 2;
    expect(unknowns.factor).toBeCloseTo(1 + (0.1 ** 2 * 10) / variance, 9);
    expect(unknowns.airK).toBeCloseTo(0.5 / variance, 9);
  });

  test('take from the air what there is no sun to take from', () => {
    const dull = { panC: 18, unknowns: { factor: 0.2, airK: 0 } };
    const wanted = 0.2 - (0.3 ** 2 * 10 * 4) / (0.15 ** 2 + 9);
    // Where the air is measured its step is none, and what is left over is lost.
    expect(corrected(dull).unknowns).toMatchObject({ factor: 0, airK: 0 });
    const { unknowns } = corrected({ ...dull, steps: { factor: 0.3, airK: 1e-6 } });
    expect(unknowns.factor).toBe(0);
    expect(unknowns.airK).toBeCloseTo((wanted * 10) / 0.5, 4);
  });

  test('never leave their bounds', () => {
    expect(corrected({ panC: 60 }).unknowns.factor).toBe(1.6);
    const air = { steps: { factor: 0, airK: 50 } };
    expect(corrected({ panC: 90, ...air }).unknowns.airK).toBe(12);
    expect(corrected({ panC: -40, ...air }).unknowns.airK).toBe(-12);
  });

  test.each<[string, Case]>([
    ['both are measured', { steps: { factor: 0, airK: 0 } }],
    ['no thermometer shows the pan', { panC: Number.NaN }],
    ['it is as good as dark', { lightWM2: 19.9 }],
    [
      'the phase changes in the window',
      {
        phases: [
          [0, 'resting'],
          [65, 'circulating'],
        ],
      },
    ],
    [
      'it changed just before',
      {
        phases: [
          [0, 'resting'],
          [56, 'circulating'],
        ],
      },
    ],
    ['water is on the move', { phases: [[0, 'filling']] }],
    ['nothing is known of the phase', { phases: [] }],
  ])('stay where they are when %s', (_, given) => {
    const unknowns = { factor: 0.7, airK: 2 };
    expect(corrected({ panC: 35, ...given, unknowns })).toMatchObject({ unknowns, unlikely: 0 });
  });

  test.each<[string, Case]>([
    ['there is a little light', { lightWM2: 20 }],
    [
      'the phase began long enough before',
      {
        phases: [
          [0, 'filling'],
          [55, 'circulating'],
        ],
      },
    ],
    [
      'it changes after the window',
      {
        phases: [
          [0, 'resting'],
          [71, 'circulating'],
        ],
      },
    ],
    ['the pan is empty', { phases: [[0, 'empty']] }],
  ])('follow when %s', (_, given) => {
    expect(corrected({ panC: 35, ...given }).unknowns.factor).toBeGreaterThan(1.4);
  });
});

describe('water at the tap with which the store bottom goes where it was seen', () => {
  /** A bottom at 30 °C that falls by 20 K for each share of the store in an hour; 3600 L make that share 1 kg/s. */
  const drawn = (bottomC: number, coldestC = -1e9) =>
    correctDraw({
      span: spanWith([]),
      unknowns: nothingUnknown,
      seen: { panC: Number.NaN, bottomC },
      attempt: (_, kgS) => ({ panC: 0, bottomC: Math.max(coldestC, 30 - 20 * kgS) }),
    });

  test('is none where the bottom is as it would be without, warmer, or not seen', () => {
    expect([30, 31, 29.901, Number.NaN].map((bottomC) => drawn(bottomC))).toEqual([0, 0, 0, 0]);
  });

  test('is that of the tried ones that comes the nearest', () => {
    expect(drawn(30 - 20 * 0.08)).toBeCloseTo(0.08, 12);
    expect(drawn(30 - 20 * 0.08 * 1.25)).toBeCloseTo(0.1, 12);
    expect(drawn(30 - 20 * 0.2 * 0.8)).toBeCloseTo(0.16, 12);
    expect(drawn(29.85)).toBeCloseTo(0.008, 12);
  });

  test('is the least where the bottom is as cold as what comes in', () => {
    expect(drawn(29, 29)).toBeCloseTo(0.08 * 0.8, 12);
  });

  test('is rather a little too small than much too large', () => {
    // 0.048 misses by 0.02 K and 0.031 K, and is the smaller; a tenth of a kelvin counts as a share of 0.15 does.
    expect(drawn(29.02, 29.02)).toBeCloseTo(0.08 * 0.6, 12);
    expect(drawn(29.009, 29.009)).toBeCloseTo(0.08 * 0.8, 12);
  });
});
