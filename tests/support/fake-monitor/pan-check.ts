import type { PanBlock, PanCheck, PanDay } from '../../../shared-types/pan-check.ts';
import type { Estimate } from '../../../shared-types/tuning.ts';
import { testSite } from './site.ts';

const kWh = 3.6e6;
/** Groups of the made-up check, the reference among them. */
const groups = 5;
const band = (value: number, half: number): Estimate => ({ value, low: value - half, high: value + half });

/** What a pan that grows dirtier gathers, as a share of what it did: as before until the middle, then less and less. */
const ratioAt = (share: number) => 1 - 0.17 * Math.max(0, (share - 0.4) / 0.6);

function madeUpDay(day: string, index: number, count: number): PanDay {
  const expectedJ = (14 + 5 * Math.sin(index * 1.7)) * kWh;
  const value = ratioAt(index / Math.max(1, count - 1)) + 0.025 * Math.sin(index * 2.9);
  const half = 0.04 + 0.02 * Math.abs(Math.cos(index * 1.3));
  return {
    day,
    hours: 4.5 + 1.5 * Math.sin(index * 1.7),
    measuredJ: value * expectedJ,
    expectedJ,
    ratio: band(value, half),
  };
}

function madeUpBlock(days: readonly PanDay[], reference: boolean): PanBlock {
  const hours = days.reduce((sum, one) => sum + one.hours, 0);
  const mean = days.reduce((sum, one) => sum + one.ratio.value, 0) / days.length;
  return {
    fromDay: days[0]?.day ?? '',
    toDay: days.at(-1)?.day ?? '',
    days: days.length,
    hours,
    ratio: reference ? band(1, 0) : band(mean, 0.018),
    efficiency: band(0.86 * (reference ? 1 : mean), 0.015),
    lossWM2K: days.length > 6 ? band(9.8 + 2 * (1 - mean), 0.9) : null,
    contactKM2W: band(0.0043 + 0.013 * (1 - (reference ? 1 : mean)), 0.0006),
  };
}

/** A made-up check of a pan that gathers less than it did; the oldest fifth is the reference unless told otherwise. */
export function testPanCheck(days: readonly string[], referenceDays: readonly string[] = []): PanCheck {
  const all = [...new Set([...referenceDays, ...days])].sort();
  const told = all.map((day, index) => madeUpDay(day, index, all.length));
  const size = Math.max(1, Math.ceil(told.length / groups));
  const isReference = ({ day }: PanDay) =>
    referenceDays.length === 0
      ? told.findIndex((one) => one.day === day) < size
      : referenceDays.includes(day);
  const later = told.filter((one) => !isReference(one));
  const blocks = Array.from({ length: Math.ceil(later.length / size) }, (_, index) =>
    madeUpBlock(later.slice(index * size, (index + 1) * size), false),
  );
  return {
    site: testSite,
    reference: madeUpBlock(told.filter(isReference), true),
    blocks,
    days: told,
    findings: [
      {
        code: 'gathers-less',
        text: 'It brings 16 % less heat than on the reference days under the same weather (14 to 17 %). What is told below may be why.',
      },
      {
        code: 'contact-poorer',
        text: 'The sheet stands 6.3 K over the water for each 1000 W/m2 that it hands on, 4.3 K before: look for air below it, or a sheet that no longer lies on the water.',
      },
    ],
    remarks: [
      'Left out: 3 days with less than an hour and a half of steady flow through a full pan.',
      'What the wind takes is taken from usual values, for the loop was not fitted.',
    ],
  };
}
