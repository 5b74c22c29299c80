import { isSunDown } from '../daylight.ts';
import type { Command, Situation } from '../situation.ts';

/** Cooling begins with a store this far above its floor [K]; a design choice. */
const beginsK = 5;

/**
 * True while the store is to lose heat through the pan: by choice, in a night that the calendar knows and that
 * brings no frost, from a store that is above the floor down to its bottom, and as long as the full pan brings
 * it nothing.
 */
export function isCooling(situation: Situation): boolean {
  const { state, facts, settings, sunHeightDeg } = situation;
  const { storeBottomC, differenceK } = facts;
  if (settings.nightCooling !== 1 || storeBottomC === null) return false;
  const { frost, heat, water } = state;
  if (sunHeightDeg === null || !isSunDown(situation)) return false;
  if (frost.latched !== null || frost.nightC !== null) return false;
  const overK = storeBottomC - settings.nightCoolingFloorC;
  if (heat.cooling ? overK <= 0 : overK < beginsK) return false;
  return water.level !== 'full' || (differenceK !== null && differenceK <= settings.stopDifferenceK);
}

/** What cooling the store asks for. */
export function coolingCommand({ state, facts, settings }: Situation): Command | null {
  const { storeBottomC } = facts;
  if (!state.heat.cooling || storeBottomC === null) return null;
  const values = { storeC: storeBottomC, nightCoolingFloorC: settings.nightCoolingFloorC };
  return { goal: 'run', cause: { code: 'cooling-store', values }, urgent: false, by: 'want' };
}
