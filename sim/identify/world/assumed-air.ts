import { median } from './mending.ts';
import { minuteMs } from './minutes.ts';
import { panChannel } from './pan-channel.ts';
import type { LoggedSpan } from './span.ts';
import { type SunColumn, sunColumn } from './sun-column.ts';

/** A dry sheet lies this much below the air in the night: between a clear and a closed sky. A design choice. */
const nightDropK = 3;
/** Half of what the air warms from its coldest to its warmest, and the hour of the warmest. Design choices. */
const swingK = 2.5;
const warmestHour = 14.5;
const darkZenithDeg = 93;
/** Where nothing was seen in the night [°C]; a design choice. */
const usualAirC = 15;

/** The air of a span without a thermometer of its own [°C]: by the sheet in the night, and a usual day's swing. */
export function assumedAirC(span: LoggedSpan): Float64Array {
  const { minutes, site } = span;
  const sun = sunColumn(site, minutes.fromMs, minutes.count);
  const nightC = nightAirC(span, sun);
  return sun.solarHour.map((hour) => nightC + courseK(hour));
}

/** Above the mean of the night. */
function courseK(hour: number): number {
  return swingK * (Math.cos(((hour - warmestHour) / 12) * Math.PI) + nightShare);
}

/** By so much of the half swing the hours of the night lie below the day's mean, about. */
const nightShare = 0.7;

function nightAirC(span: LoggedSpan, { zenithDeg }: SunColumn): number {
  const { minutes, phases } = span;
  const channel = panChannel(span);
  const sheetC = channel === undefined ? undefined : minutes.values[channel];
  const dry: number[] = [];
  const any: number[] = [];
  sheetC?.forEach((valueC, i) => {
    if (Number.isNaN(valueC) || (zenithDeg[i] as number) < darkZenithDeg) return;
    any.push(valueC);
    const atMs = minutes.fromMs + i * minuteMs;
    if (phases.findLast(({ fromMs }) => fromMs <= atMs)?.phase === 'empty') dry.push(valueC);
  });
  if (dry.length > 0) return median(dry) + nightDropK;
  return any.length > 0 ? Math.min(...any) + nightDropK : usualAirC;
}
