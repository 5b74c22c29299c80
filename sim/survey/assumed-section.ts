import type { Parts } from '../plant/parts.ts';
import { waterKgL } from '../plant/water.ts';
import { figure, type Section } from './report.ts';

/** What no site file says and much hangs on; a scenario's traits may say otherwise. */
export function assumedSection({ traits, pipe, reservoir, plumbing }: Parts): Section {
  const trait = 'Assumed; a scenario file may name another.';
  return {
    title: 'Assumed where the site file is silent',
    figures: [
      figure(
        'Pipes, inside',
        traits.pipeInsideMm,
        'mm',
        'The rated flow stays below 1 m/s in it, unless named.',
      ),
      figure('Each pipe', pipe.lengthM, 'm', 'The height, and 5 m beyond it unless named.'),
      figure('Drain, inside', traits.drainInsideMm, 'mm', trait),
      figure('Sheet to water', traits.contactWM2K, 'W/m2K', 'At the rated flow, touching everywhere.'),
      ...(plumbing.reservoir
        ? [
            figure('Reservoir', reservoir.startKg / waterKgL, 'L', 'Pan and pipes, 15 % and 20 L more.'),
            figure(
              'Heat exchanger',
              reservoir.exchangerWK,
              'W/K',
              'Each kelvin across it is lost to the pan.',
            ),
          ]
        : []),
    ],
    warnings: [],
  };
}
