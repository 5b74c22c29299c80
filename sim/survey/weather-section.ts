import { restingPlateC } from '../../controller/engine/bare-plate.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { SkyLoad } from '../physics/collector.ts';
import { plateConvectionWM2K } from '../physics/convection.ts';
import { type LumpedPan, stillPanC, timeConstantS } from '../physics/lumped-pan.ts';
import type { Parts } from '../plant/parts.ts';
import { bodyUnder } from './pan-body.ts';
import { figure, type Section, warnIf } from './report.ts';
import { clearNight, dryPlateUnder, hotNoon, loadOf } from './stated-days.ts';

/** Where a full pan begins its night. */
const eveningC = 10;

/** A dry sheet under a load, by the least and the most convection that was published. */
function dryRange(load: SkyLoad, { collector }: Parts) {
  const all = Object.values(plateConvectionWM2K).map((convection) =>
    restingPlateC(dryPlateUnder(load, collector.emissivityRatio, convection(load.windMs))),
  );
  return { lowC: Math.min(...all), highC: Math.max(...all) };
}

/** Warmest air at which a dry sheet comes to 0 °C in that night, its dew point as far below as there. */
function frostAirC(parts: Parts, elevationM: number): number {
  let low = -10;
  let high = 20;
  while (high - low > 0.01) {
    const airC = (low + high) / 2;
    const dewC = airC - (clearNight.airC - clearNight.dewC);
    const { lowC } = dryRange(loadOf({ ...clearNight, airC, dewC }, elevationM), parts);
    if (lowC < 0) low = airC;
    else high = airC;
  }
  return low;
}

/** Hours until a full pan comes to 0 °C; null when it never does. */
function freezeH(night: LumpedPan): number | null {
  const endC = stillPanC(night);
  return endC >= 0 ? null : (timeConstantS(night) * Math.log((eveningC - endC) / (0 - endC))) / 3600;
}

/** The hottest and the coldest that sheet and pan come to, on a stated day and night. */
export function weatherSection(site: Site, parts: Parts, settings: Settings): Section {
  const { elevationM } = site.location;
  const hot = loadOf(hotNoon, elevationM);
  const night = loadOf(clearNight, elevationM);
  const dryHot = dryRange(hot, parts);
  const dryCold = dryRange(night, parts);
  const wetHotC = stillPanC(bodyUnder(parts, hot));
  const { linerLimitC } = site.pan;
  return {
    title: 'Heat and frost',
    figures: [
      figure('Dry sheet, highest', dryHot.highC, 'C', `${hotNoon.words}; the liner stands ${linerLimitC} C.`),
      figure(
        'Dry sheet, by the strongest convection',
        dryHot.lowC,
        'C',
        'The same; published convections differ.',
      ),
      figure('Full pan without flow', wetHotC, 'C', 'The same noon, if it lasted.'),
      figure('Dry sheet, lowest', dryCold.lowC, 'C', `${clearNight.words}; by the weakest convection.`),
      figure('Dry sheet, by the strongest convection', dryCold.highC, 'C', 'The same night.'),
      figure(
        'Frost on the dry sheet from air of',
        frostAirC(parts, elevationM),
        'C',
        'In such a night, by the weakest convection: a radiating sheet is colder than the air.',
      ),
      figure(
        `Full pan from ${eveningC} to 0 C`,
        freezeH(bodyUnder(parts, night)),
        'h',
        parts.plumbing.drain === 'none'
          ? 'The same night; it cannot be emptied.'
          : `The same night; emptied at ${settings.frostTemperatureC} C if all goes well.`,
      ),
    ],
    warnings: [
      ...warnIf(
        dryHot.highC > linerLimitC,
        'dry-liner',
        `The dry sheet comes to ${dryHot.highC.toFixed(0)} C (${hotNoon.words}); the liner stands ${linerLimitC} C. Keep it off the sheet.`,
      ),
      ...warnIf(
        wetHotC > linerLimitC - settings.linerMarginK,
        'wet-liner',
        `A full pan without flow comes to ${wetHotC.toFixed(0)} C (${hotNoon.words}); the liner counts as too hot from ${(linerLimitC - settings.linerMarginK).toFixed(0)} C.`,
      ),
    ],
  };
}
