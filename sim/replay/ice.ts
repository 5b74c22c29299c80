/** Ice in a pan that differs by less is the same: a film that is left in an emptied one [kg]. A design choice. */
const sameIceKg = 0.1;

/** Whether a pan held more ice than another did. */
export const moreIce = (iceKg: number, thanKg: number) => iceKg > thanKg + sameIceKg;

/** Of the ice of a pan under the settings of then and under tried ones, where there was any. */
export function iceRemarks(thenKg: number, triedKg: number): string[] {
  if (!moreIce(Math.max(thenKg, triedKg), 0)) return [];
  return [
    `The pan held up to ${iceText(triedKg)} of ice under the tried settings, ${iceText(thenKg)} under those of then. ` +
      'Where there is ice the coldest water shows 0 °C, however much of it freezes.',
  ];
}

/** Of all sets of settings of a sweep, those in force first. */
export function sweepIceRemarks([inForceKg = 0, ...othersKg]: readonly number[]): string[] {
  const more = othersKg.filter((iceKg) => moreIce(iceKg, inForceKg));
  if (more.length === 0) return [];
  return [
    `${more.length} sets freeze more of the pan than the settings in force do, up to ${iceText(Math.max(...more))} ` +
      `instead of ${iceText(inForceKg)}: none of them is advised.`,
  ];
}

export const iceText = (iceKg: number) => `${iceKg.toFixed(1)} kg`;
