import type { Settings } from '../../../shared-types/settings.ts';
import {
  type BarePlate,
  blackFraction,
  plateConvectionWM2K,
  plateLossWM2K,
  restingPlateC,
} from '../bare-plate.ts';
import { isSunDown } from '../daylight.ts';
import { good, usable } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { blackBodyWM2, clearSkyEmissivity, dewPointC } from '../sky.ts';
import { sunHeightDeg } from '../sun/position.ts';
import { isInFrostSeason } from './frost-season.ts';

/** Without a humidity sensor the dew point counts as this far below the air [K]: dry; a design choice. */
const dryK = 13;
/** Without an air sensor the air counts as this cold while frost is possible [°C]; a design choice. */
const unseenAirC = 0;
/** A predicted frost ends this far above where it began [K]; a design choice. */
const nightEndsK = 1;
/** Temperatures are rounded to this [K], so that every JavaScript engine meets thresholds alike. */
const stepsPerK = 10;
/** A night of which the end is not known lasts this long [h]; longer than any below 60 degrees of latitude. */
const longestNightH = 20;
/** How far apart the sun is looked for when the end of a night is sought [h]. */
const lookH = 2;
const hourMs = 3_600_000;
/** Heat that warms a cubic metre of water by one kelvin [J/m3K], at 10 °C. */
const waterJM3K = 4.194e6;

function rounded(temperatureC: number): number {
  return Math.round(temperatureC * stepsPerK) / stepsPerK;
}

/**
 * The black sheet under this night's sky.
 *
 * What is not measured well counts as what cools most: still, dry air and no cloud; a doubtful reading counts
 * where it is the colder one. Null when the air is not known and no frost is possible at this time of the year.
 */
function nightPlate({ readings, site, localDay }: Situation): BarePlate | null {
  const airC = nightAirC(readings.ambientC, isInFrostSeason(site, localDay));
  if (airC === null) return null;
  const humidity = good(readings.humidityFraction);
  const dewC = humidity === null ? airC - dryK : dewPointC(airC, humidity);
  const clearWM2 = clearSkyEmissivity(dewC, site.location.elevationM) * blackBodyWM2(airC);
  const sky = readings.longWaveWM2;
  return {
    absorbedWM2: 0,
    emissivity: blackFraction,
    skyWM2: good(sky) ?? Math.min(usable(sky) ?? clearWM2, clearWM2),
    convectionWM2K: plateConvectionWM2K(good(readings.windMs) ?? 0),
    airC,
  };
}

function nightAirC(reading: Situation['readings']['ambientC'], frostIsPossible: boolean): number | null {
  const seenC = usable(reading);
  if (reading?.quality === 'good' || !frostIsPossible) return seenC;
  return Math.min(seenC ?? unseenAirC, unseenAirC);
}

/**
 * Temperature to which the sheet falls if the night stays as it is now [°C], where that is frost; else null.
 *
 * @param before - What this function returned at the step before.
 */
export function frostNightC(situation: Situation, before: number | null): number | null {
  if (!isSunDown(situation)) return null;
  const plate = nightPlate(situation);
  if (plate === null) return null;
  const sheetC = rounded(restingPlateC(plate));
  const limitC = situation.settings.frostNightC + (before === null ? 0 : nightEndsK);
  return sheetC <= limitC ? sheetC : null;
}

/**
 * True when the full pan, left to itself, would end this night above the frost temperature: its water cools
 * towards the sheet's resting temperature as one body, and the sky has no more than a night to do it.
 *
 * @param sheetC - That temperature.
 */
export function outlastsNight(situation: Situation, sheetC: number): boolean {
  const { facts, state, site, settings } = situation;
  const plate = nightPlate(situation);
  if (plate === null || !facts.panIsGood || state.water.level !== 'full') return false;
  // Known where a pan sensor is good.
  const coldestPanC = facts.coldestPanC as number;
  const lossWM2K = plateLossWM2K(plate, (coldestPanC + sheetC) / 2);
  const timeConstantS = (site.pan.waterDepthM * waterJM3K) / lossWM2K;
  const left = Math.exp(-nightLeftS(situation, settings) / timeConstantS);
  return rounded(sheetC + (coldestPanC - sheetC) * left) > settings.frostTemperatureC;
}

/**
 * How long the night lasts yet, to the next look at the sun [s]. Without a calendar nobody knows: then the
 * time counts that emptying takes twice over, and an hour.
 */
function nightLeftS({ state, site }: Situation, { drainTimeS }: Settings): number {
  const { atMs } = state.sunClock;
  if (atMs === null) return 2 * drainTimeS + 3600;
  let ahead = lookH;
  while (ahead < longestNightH && sunHeightDeg(atMs + ahead * hourMs, site.location) < 0) ahead += lookH;
  return ahead * 3600;
}
