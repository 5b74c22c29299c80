import type { Estimate } from '../../shared-types/tuning.ts';
import type { UsableDay } from './groups.ts';
import { studentHalfWidth } from './student.ts';

/** With less heat the sheet's excess is mostly the error of two thermometers [W/m2]. A design choice. */
const leastGaveWM2 = 100;
const leastDays = 3;

/** How much warmer the sheet stands than the water for each watt a square metre [K m2/W]; null where too few days tell. */
export function contactOf(days: readonly UsableDay[]): Estimate | null {
  const told = days.flatMap((day) => dayContact(day) ?? []);
  if (told.length < leastDays) return null;
  const value = told.reduce((sum, one) => sum + one, 0) / told.length;
  const squares = told.reduce((sum, one) => sum + (one - value) ** 2, 0);
  const standardError = Math.sqrt(squares / (told.length - 1) / told.length);
  const half = studentHalfWidth(told.length - 1) * standardError;
  return { value, low: value - half, high: value + half };
}

function dayContact({ stretches }: UsableDay): number | undefined {
  let excess = 0;
  let gave = 0;
  for (const { sheetOverK, gaveWM2 } of stretches) {
    if (sheetOverK === null || gaveWM2 < leastGaveWM2) continue;
    excess += sheetOverK;
    gave += gaveWM2;
  }
  return gave === 0 ? undefined : excess / gave;
}
