import { describe, expect, test } from 'vitest';
import type { RawReadings } from '../../../../../shared-types/readings.ts';
import { beginOf } from '../../../../../sim/identify/world/begin.ts';
import { panLiquidKg } from '../../../../../sim/plant/state.ts';
import { minutely, spanOf } from './span-rig.ts';

const noDraws = { fromMs: 0, stepMs: 1, wantedKgS: [] };
const readings = (values: Readonly<Record<string, number>>): RawReadings =>
  Object.fromEntries(Object.entries(values).map(([channel, value]) => [channel, { value, ageMs: 0 }]));

describe('a loop that begins as its log shows it', () => {
  test('has a store between what its sensors show', () => {
    const span = spanOf(
      minutely(0, 1440, () => ({ input: { readings: readings({ storeTopC: 50, storeBottomC: 28 }) } })),
    );
    const { store } = beginOf(span, {}, noDraws);
    expect(store.waterC[0]).toBe(50);
    expect(store.waterC.at(-1)).toBeCloseTo(28, 9);
    expect(store.waterC[1]).toBeCloseTo(48, 9);
  });

  test('takes the mean of ten minutes from when a sensor was first read, however late that is', () => {
    const span = spanOf(
      minutely(400, 1440, (minute) => ({
        input: { readings: readings({ storeBottomC: minute < 410 ? 41 : 90 }) },
      })),
    );
    expect(beginOf(span, {}, noDraws).store.waterC.at(-1)).toBe(41);
  });

  test('has water in its pan where the log has it, and none in an empty one', () => {
    const phased = (phase: 'resting' | 'empty') =>
      beginOf(spanOf(minutely(0, 1440, () => ({ outcome: { phase } }))), {}, noDraws);
    expect(panLiquidKg(phased('resting'))).toBeGreaterThan(400);
    expect(panLiquidKg(phased('empty'))).toBe(0);
  });
});
