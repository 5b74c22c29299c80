import { hold } from '../../blocks/hold.ts';
import type { Situation } from '../../situation.ts';
import { good } from '../facts.ts';

/** A sun sensor below this sees none [W/m2]: its own error, and the last of dusk; a design choice. */
const darkWM2 = 5;

/** Since when it is dark [steady ms]: by the sun's place, without a calendar by a sun sensor; else null. */
export function darkSince({ sunHeightDeg, readings, state, runMs }: Situation): number | null {
  const sunWM2 = good(readings.irradianceWM2);
  const isDark = sunHeightDeg === null ? sunWM2 !== null && sunWM2 < darkWM2 : sunHeightDeg < 0;
  return hold(state.watch.darkMs, isDark, runMs);
}
