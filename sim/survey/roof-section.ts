import type { Site } from '../../shared-types/site.ts';
import { depthPa, gravityMS2 } from '../physics/gravity.ts';
import type { Parts } from '../plant/parts.ts';
import { waterKgL } from '../plant/water.ts';
import { figure, type Section } from './report.ts';

const densityKgM3 = 1000 * waterKgL;
const kgM2 = (depthM: number) => depthPa(depthM, densityKgM3) / gravityMS2;

/** What the pan's water weighs. */
export function roofSection({ pan }: Site, parts: Parts): Section {
  const brimM = Math.max(pan.waterDepthM, pan.wallHeightM);
  const usualKgM2 = kgM2(pan.waterDepthM);
  const brimKgM2 = kgM2(brimM);
  const { fullKg } = parts.pan;
  return {
    title: 'Weight on the roof',
    figures: [
      figure('Water in the full pan', fullKg, 'kg', 'The roof carries it for months.'),
      figure('Load of that water', usualKgM2, 'kg/m2', 'Sheet, frame, snow and people come on top.'),
      figure(
        'Pressure on the liner',
        depthPa(pan.waterDepthM, densityKgM3),
        'Pa',
        'Floor and seams stand it at all times.',
      ),
      figure(
        'Load with water up to the wall',
        brimKgM2,
        'kg/m2',
        'A blocked outlet or heavy rain fills the pan to its wall.',
      ),
      figure(
        'Water up to the wall',
        brimKgM2 * pan.wettedAreaM2,
        'kg',
        'The whole of it, if nothing lets it out.',
      ),
    ],
    warnings: [
      {
        code: 'roof-load',
        text:
          `A licensed person must check that the roof carries ${usualKgM2.toFixed(0)} kg/m2 of water, ` +
          `${fullKg.toFixed(0)} kg in all, and ${brimKgM2.toFixed(0)} kg/m2 when the outlet is blocked.`,
      },
    ],
  };
}
