import { reportOf } from '../physics/test-report.ts';
import type { Parts } from '../plant/parts.ts';
import { bodyUnder } from './pan-body.ts';
import { figure, type Section } from './report.ts';
import { hotNoon, loadOf } from './stated-days.ts';

/** The sheet as a test house would state it, so that a test report can be held beside it. */
export function testReportSection(parts: Parts): Section {
  const { capacityJM2K } = bodyUnder(parts, loadOf(hotNoon, 0));
  const report = reportOf(parts.collector, capacityJM2K);
  return {
    title: 'As a test report by ISO 9806:2017 would state it (at 3 m/s)',
    figures: [
      figure('eta0,b', report.eta0b, '1', 'Share of the sun that is gathered at air temperature.'),
      figure('a1', report.a1, 'W/m2K', 'Loss to the air.'),
      figure('a3', report.a3, 'J/m3K', 'How that loss grows with the wind.'),
      figure('a4', report.a4, '1', 'Share of the long-wave exchange with the sky.'),
      figure('a5', report.a5 / 1000, 'kJ/m2K', 'Heat capacity; here it is mostly the water.'),
      figure('a6', report.a6, 's/m', 'Efficiency lost to each metre a second of wind.'),
      figure('a7', report.a7, 's/m', 'The same for the long-wave exchange.'),
    ],
    warnings: [],
  };
}
