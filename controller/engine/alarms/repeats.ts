import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { AlarmMemory } from '../state.ts';

/** An alarm that comes again this soon after it returned repeats itself [ms]; a design choice. */
const repeatWithinMs = 6 * 3_600_000;
/** Off-delays of an alarm that repeats itself, after the first repeat and the later ones [s]; design choices. */
const secondOffDelayS = 600;
const laterOffDelayS = 3600;

/** How often the alarm has repeated itself, once it is raised now. */
export function repeatsOf({ returnedMs, repeats }: AlarmMemory, runMs: number): number {
  return isRemembered(returnedMs, runMs) ? repeats + 1 : 0;
}

/**
 * How long the condition has to be gone before the alarm returns [ms]: longer for one that repeats itself,
 * so that none chatters.
 *
 * An alarm without an off-delay ends by a proof or an act of a person, and so it does at once.
 */
export function offDelayMs(code: AlarmCode, repeats: number): number {
  const { offDelayS } = alarmCatalogue[code];
  if (offDelayS === 0 || repeats === 0) return offDelayS * 1000;
  return Math.max(offDelayS, repeats === 1 ? secondOffDelayS : laterOffDelayS) * 1000;
}

/** True while the last return of an alarm may still make the next raising a repeat. */
export function isRemembered(returnedMs: number | null, runMs: number): boolean {
  return returnedMs !== null && runMs - returnedMs < repeatWithinMs;
}
