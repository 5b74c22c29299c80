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
        text: 'The pan gathers 14.1 % less than on the reference days (12.3 to 15.9 %), some 2.1 kWh on a day like these. Look for dirt on the sheet, a sheet that has faded, and new shade.',
      },
      {
        code: 'contact-poorer',
        text: 'At 800 W/m2 the sheet stands 5.1 K above the water, 1.7 K more than on the reference days. Look for air under the sheet and for too little water.',
      },
    ],
    remarks: [
      'Days with less than an hour of steady flow were left out.',
      'The wind was measured; what it takes was held at usual values, since no fit is kept.',
    ],
  };
}
