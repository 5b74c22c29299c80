import { good } from './sense/facts.ts';
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
  if (sunHeightDeg !== null && sunHeightDeg < 0) return true;
  const sun = readings.irradianceWM2;
  const dark = sun !== undefined && sun.quality !== 'failed' && sun.value <= darkWM2;
  if (!dark && (sunHeightDeg !== null || good(sun) !== null)) return false;
  return !showsSun(situation);
}

function showsSun({ readings, facts, state: { water } }: Situation): boolean {
  const { coldestPanC, panIsGood } = facts;
  if (water.level !== 'empty' || coldestPanC === null || !panIsGood) return false;
  return coldestPanC >= (good(readings.ambientC) ?? 0) + sunnyK;
}

/** True by day, and where nothing tells day from night: what waits for the day would else wait for ever. */
export function isDaylight(situation: Situation): boolean {
  const sun = situation.readings.irradianceWM2;
  const untold = situation.sunHeightDeg === null && (sun === undefined || sun.quality === 'failed');
  return untold || !isSunDown(situation);
}
