import type { Estimate } from '../../shared-types/tuning.ts';
import type { UsableDay } from './groups.ts';
import { bandAbout, meanOf } from './student.ts';

/** With less heat the sheet's excess is mostly the error of two thermometers [W/m2]. A design choice. */
const leastGaveWM2 = 100;
const leastDays = 3;

/** How much warmer the sheet stands than the water for each watt a square metre [K m2/W]; null where too few days tell. */
export function contactOf(days: readonly UsableDay[]): Estimate | null {
  const told = days.flatMap((day) => dayContact(day) ?? []);
  if (told.length < leastDays) return null;
  const { mean, standardError } = meanOf(told);
  return bandAbout(mean, standardError, told.length - 1);
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
