import { describe, expect, it } from 'vitest';
import { passingCloudWM2 } from '../../../../sim/identify/world/passing-cloud.ts';
import type { SkyColumns } from '../../../../sim/identify/world/sky-columns.ts';
import { sunColumn } from '../../../../sim/identify/world/sun-column.ts';
import { fromMs, site } from './world/span-rig.ts';

const sun = sunColumn(site, fromMs, 1440);
const noon = sun.zenithDeg.indexOf(Math.min(...sun.zenithDeg));
const bright = [...sun.zenithDeg.keys()].filter((minute) => (sun.zenithDeg[minute] as number) <= 80);
const [dawn = 0, dusk = 0] = [bright[0], bright.at(-1)];

function passing(clearness: (minute: number) => number): Float64Array {
  const irradianceWM2 = sun.spaceWM2.map((space, minute) => clearness(minute) * space);
  return passingCloudWM2({ irradianceWM2, sun } as unknown as SkyColumns);
}

describe('long-wave light of clouds that come and go', () => {
  it.each([0.1, 0.45, 0.8])('is none on a day that is all through as clear as %f', (clearness) => {
    for (const watts of passing(() => clearness)) expect(watts).toBeCloseTo(0, 9);
  });

  it('rises by 75 W/m2 within the hour when a clear sky closes', () => {
    const front = passing((minute) => (minute < noon ? 0.75 : 0.15));
    expect((front[noon + 35] as number) - (front[noon - 35] as number)).toBeCloseTo(75, -1);
    const middle = ((front[noon + 35] as number) + (front[noon - 35] as number)) / 2;
    expect(front[noon]).toBeCloseTo(middle, -1);
  });

  it('stays in the night with the sky that the evening had', () => {
    const front = passing((minute) => (minute < noon ? 0.75 : 0.15));
    expect(front[dusk + 120]).toBeGreaterThan(20);
    expect(front[dawn - 120]).toBeLessThan(-20);
    expect(Math.abs((front[dusk + 1] as number) - (front[dusk] as number))).toBeLessThan(1);
    expect(Math.abs((front[dawn - 1] as number) - (front[dawn] as number))).toBeLessThan(1);
  });
});
