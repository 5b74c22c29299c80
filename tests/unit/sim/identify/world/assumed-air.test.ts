import { describe, expect, test } from 'vitest';
import type { PhaseName } from '../../../../../shared-types/engine.ts';
import { assumedAirC } from '../../../../../sim/identify/world/assumed-air.ts';
import type { LoggedSpan } from '../../../../../sim/identify/world/span.ts';
import { sunColumn } from '../../../../../sim/identify/world/sun-column.ts';
import { fromMs, site } from './span-rig.ts';

const count = 1440;
const sun = sunColumn(site, fromMs, count);
const night = (minute: number) => (sun.zenithDeg[minute] as number) >= 93;

function airOf(
  values: Readonly<Record<string, (minute: number) => number>>,
  phase: PhaseName = 'circulating',
): Float64Array {
  const columns = Object.entries(values).map(([channel, at]) => [
    channel,
    Float64Array.from({ length: count }, (_, minute) => at(minute)),
  ]);
  const span = {
    site,
    dayFromMs: fromMs,
    minutes: { fromMs, count, values: Object.fromEntries(columns), steps: new Uint16Array(count).fill(1) },
    phases: [{ fromMs, phase }],
  };
  return assumedAirC(span as unknown as LoggedSpan);
}

/** What the night was taken for: the course of a day lies between 0.3 and 1.7 half swings of 2.5 K about it. */
const nightC = (airC: Float64Array) => (Math.min(...airC) + Math.max(...airC)) / 2 - 2.5 * 0.7;

describe('the air of a day without a thermometer of its own', () => {
  test('is the warmest at half past two by the sun, five kelvins above the coldest', () => {
    const airC = airOf({});
    const warmest = airC.indexOf(Math.max(...airC));
    expect(sun.solarHour[warmest]).toBeCloseTo(14.5, 1);
    expect(Math.max(...airC) - Math.min(...airC)).toBeCloseTo(5, 3);
    expect(nightC(airC)).toBeCloseTo(15, 3);
  });

  test('lies three kelvins above a sheet that was dry in the night: its middle value', () => {
    const sheet = (minute: number) => (night(minute) ? [4, 5, 9][minute % 3] : 60) as number;
    expect(nightC(airOf({ panSheetC: sheet }, 'empty'))).toBeCloseTo(8, 3);
  });

  test('lies three kelvins above the coldest of a sheet on water', () => {
    const sheet = (minute: number) => (night(minute) ? [4, 5, 9][minute % 3] : -60) as number;
    expect(nightC(airOf({ panSheetC: sheet }, 'resting'))).toBeCloseTo(7, 3);
  });

  test('is told by the outlet where the sheet has no thermometer, and holes tell nothing', () => {
    const outlet = (minute: number) => (minute % 2 === 0 ? 6 : Number.NaN);
    expect(nightC(airOf({ panOutletC: outlet }))).toBeCloseTo(9, 3);
    expect(nightC(airOf({ panOutletC: () => Number.NaN }))).toBeCloseTo(15, 3);
  });
});
