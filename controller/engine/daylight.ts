import { good, usable } from './sense/facts.ts';
import type { Situation } from './situation.ts';

/** A sun sensor that shows no more than this shows a dark sky [W/m2]; a design choice. */
const darkWM2 = 5;
/** No night makes a dry sheet this much warmer than the air [K]; a design choice. */
const sunnyK = 5;

/**
 * True unless something shows that the sun is up.
 *
 * A sun sensor that is dark tells night, whatever the calendar says; without a calendar a lit one tells day. A
 * dry sheet that is clearly warmer than the air tells day as well, but not against the calendar.
 */
export function isSunDown(situation: Situation): boolean {
  const { sunHeightDeg, readings } = situation;
  if ((sunHeightDeg ?? 0) < 0) return true;
  const sun = readings.irradianceWM2;
  const sunWM2 = usable(sun);
  const dark = sunWM2 !== null && sunWM2 <= darkWM2;
  if (!dark && (sunHeightDeg !== null || good(sun) !== null)) return false;
  return !showsSun(situation);
}

function showsSun({ readings, facts, state: { water } }: Situation): boolean {
  if (water.level !== 'empty' || !facts.panIsGood) return false;
  // Known where a pan sensor is good.
  const coldestC = facts.coldestPanC as number;
  return coldestC >= (good(readings.ambientC) ?? 0) + sunnyK;
}

/** True by day, and where nothing tells day from night: what waits for the day would else wait for ever. */
export function isDaylight(situation: Situation): boolean {
  const sun = situation.readings.irradianceWM2;
  const untold = situation.sunHeightDeg === null && (sun === undefined || sun.quality === 'failed');
  return untold || !isSunDown(situation);
}
