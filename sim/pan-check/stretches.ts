import { sourceOf } from '../../controller/engine/meter/ends.ts';
import { streamHeatW, waterDensityKgM3, waterHeatJKgK } from '../../controller/engine/water.ts';
import type { Channel } from '../../shared-types/channels.ts';
import type { Site } from '../../shared-types/site.ts';
import { minuteMs } from '../identify/world/minutes.ts';
import { isMeasured } from '../identify/world/read-fraction.ts';
import { conditionsOf, type SkyColumns, skyColumns } from '../identify/world/sky-columns.ts';
import type { LoggedSpan } from '../identify/world/span.ts';
import { type CollectorCoefficients, netIrradianceWM2, opticalFraction } from '../physics/collector.ts';
import type { Conditions } from '../weather/conditions.ts';

/** A stretch in which water flowed steadily through a full pan: what the pan gave, and under what sky. */
export interface Stretch {
  readonly day: string;
  /** Mean solar time of its middle [h]. */
  readonly solarHour: number;
  /** Heat that each square metre of gross area gave, carried away and stored [W/m2]. */
  readonly gaveWM2: number;
  /** Net irradiance, less what the wind takes of the efficiency [W/m2]. */
  readonly lightWM2: number;
  /** Mean water over the air [K], and the wind [m/s]. */
  readonly overAirK: number;
  readonly windMs: number;
  /** Sheet over the mean water [K]; null without a reading. */
  readonly sheetOverK: number | null;
}

export type StretchesRead =
  | { readonly ok: true; readonly stretches: readonly Stretch[]; readonly remarks: readonly string[] }
  | { readonly ok: false; readonly why: string };

/**
 * Length of a stretch [min]: longer than the water takes through most pans, shorter than a day changes. A design choice.
 */
export const stretchMin = 30;
/** A circulation is looked at from then on [min]: a fill has then mixed. A design choice. */
const settledMin = 30;
/** How many minutes at its ends tell how a stretch began and ended [min]. A design choice. */
const endMin = 5;
/** Of its minutes so many must have been read [min]. A design choice. */
const leastReadMin = 25;
/** Heat capacity of the sheet [J/m2K], as of a millimetre of steel. A design choice. */
const sheetJM2K = 4000;

/** Wind and sky of a collector, of which a check tells nothing. */
export type HeldCoefficients = Pick<
  CollectorCoefficients,
  'windOpticalSM' | 'windLossJM3K' | 'emissivityRatio'
>;

/** The steady stretches of a logged day. Refused with words where a sensor that tells the balance is not there. */
export function stretchesOf(span: LoggedSpan, held: HeldCoefficients): StretchesRead {
  const { minutes, day } = span;
  const columns = skyColumns(span, () => new Float64Array(minutes.count).fill(Number.NaN));
  if (columns.origins.irradiance !== 'measured') return refused('no sun was measured');
  if (columns.origins.air !== 'measured') return refused('no air was measured');
  const ends = endsOf(span);
  if (ends === undefined) return refused('the water was not measured at both ends of the pan');
  const light = lightOf(columns, held);
  const stretches = beginnings(span, ends).flatMap((from): Stretch[] => {
    const gaveWM2 = isRead(span, ends, from) ? balanceOf(span.site, ends, from) : Number.NaN;
    if (Number.isNaN(gaveWM2)) return [];
    const mean = (value: (minute: number) => number) => meanOver(from, from + stretchMin, value);
    const sheetC = minutes.values.panSheetC;
    const sheetOverK = mean((minute) => (sheetC?.[minute] ?? Number.NaN) - ends.meanC(minute));
    return [
      {
        day,
        solarHour: columns.sun.solarHour[from + stretchMin / 2] as number,
        gaveWM2,
        lightWM2: mean(light),
        overAirK: mean((minute) => ends.meanC(minute) - (columns.airC[minute] as number)),
        windMs: mean((minute) => columns.windMs[minute] as number),
        sheetOverK: Number.isNaN(sheetOverK) ? null : sheetOverK,
      },
    ];
  });
  return { ok: true, stretches, remarks: assumptions(columns.origins, ends) };
}

const refused = (why: string): StretchesRead => ({ ok: false, why });

/** Net irradiance of each minute, less what the wind takes of the efficiency [W/m2]. */
function lightOf(columns: SkyColumns, held: HeldCoefficients): (minute: number) => number {
  const conditions = conditionsOf(columns);
  const coefficients = { ...held, opticalEfficiency: 1, stillLossWM2K: 0 };
  return (minute) => {
    const here = conditions[minute] as Conditions;
    return opticalFraction(here.windMs, coefficients) * netIrradianceWM2(here, coefficients);
  };
}

function assumptions({ wind, sky }: SkyColumns['origins'], { flowLMin }: Ends): string[] {
  const remarks: string[] = [];
  if (flowLMin === undefined)
    remarks.push('No flow was measured: the pump is taken to bring what it is rated for, on all days alike.');
  if (wind !== 'measured') remarks.push('No wind was measured: 2 m/s are assumed, on all days alike.');
  if (sky === 'assumed')
    remarks.push("Neither the sky's long-wave light nor the humidity was measured: usual air is assumed.");
  return remarks;
}

/** First minutes of stretches that are steady from end to end and belong to the day. */
function beginnings(span: LoggedSpan, ends: Ends): number[] {
  const steady = steadyMinutes(span, ends);
  const begin: number[] = [];
  let length = 0;
  for (let minute = (span.dayFromMs - span.minutes.fromMs) / minuteMs; minute < steady.length; minute++) {
    length = steady[minute] === 1 ? length + 1 : 0;
    if (length < stretchMin) continue;
    begin.push(minute + 1 - stretchMin);
    length = 0;
  }
  return begin;
}

interface Ends {
  readonly inC: Float64Array;
  readonly outC: Float64Array;
  /** Undefined: not measured. */
  readonly flowLMin: Float64Array | undefined;
  meanC(minute: number): number;
}

/** Water that enters and leaves the pan, where it was measured. */
function endsOf(span: LoggedSpan): Ends | undefined {
  const { values } = span.minutes;
  const measured = (channel: Channel) => (isMeasured(channel, span) ? values[channel] : undefined);
  const inC = measured('panInletC') ?? measured(sourceOf(span.site));
  const outC = measured('panOutletC');
  if (inC === undefined || outC === undefined) return undefined;
  const meanC = (minute: number) => ((inC[minute] as number) + (outC[minute] as number)) / 2;
  return { inC, outC, flowLMin: measured('flowLMin'), meanC };
}

/**
 * Whether enough of a stretch was read to judge it: not only of the water, for what was missed of the weather is filled
 * from both sides of the hole.
 */
function isRead({ minutes: { values } }: LoggedSpan, { inC, outC, flowLMin }: Ends, from: number): boolean {
  const needed = [inC, outC, flowLMin, values.irradianceWM2, values.ambientC].filter(
    (one) => one !== undefined,
  );
  let read = 0;
  for (let minute = from; minute < from + stretchMin; minute++)
    read += Number(needed.every((column) => !Number.isNaN(column[minute])));
  return read >= leastReadMin;
}

/** What the pan gave in a stretch [W/m2]; not a number where nothing was read at one of its ends. */
function balanceOf({ pan, pump }: Site, { inC, outC, flowLMin, meanC }: Ends, from: number): number {
  const to = from + stretchMin;
  const carriedW = meanOver(from, to, (minute) => {
    const flow = flowLMin === undefined ? pump.ratedFlowLMin : (flowLMin[minute] as number);
    const cold = inC[minute] as number;
    return streamHeatW(flow, outC[minute] as number, cold, cold);
  });
  const beganC = meanOver(from, from + endMin, meanC);
  const endedC = meanOver(to - endMin, to, meanC);
  const waterJK = pan.wettedAreaM2 * pan.waterDepthM * waterDensityKgM3(endedC) * waterHeatJKgK(endedC);
  const storedW =
    ((waterJK + sheetJM2K * pan.grossAreaM2) * (endedC - beganC)) / ((stretchMin - endMin) * 60);
  return (carriedW + storedW) / pan.grossAreaM2;
}

/** Mean of what is known; not a number where nothing is. */
function meanOver(from: number, to: number, value: (minute: number) => number): number {
  let sum = 0;
  let count = 0;
  for (let minute = from; minute < to; minute++) {
    const here = value(minute);
    if (Number.isNaN(here)) continue;
    sum += here;
    count++;
  }
  return sum / count;
}

/** 1 for each minute in which the pump ran from end to end, in a circulation that has settled. */
function steadyMinutes({ minutes, phases }: LoggedSpan, { flowLMin }: Ends): Uint8Array {
  const { fromMs, count, drives, steps } = minutes;
  const steady = new Uint8Array(count);
  let next = 0;
  for (let minute = 0; minute < count; minute++) {
    const beginsMs = fromMs + minute * minuteMs;
    while ((phases[next]?.fromMs ?? Number.POSITIVE_INFINITY) <= beginsMs) next++;
    const begun = phases[next - 1];
    const goesOn = (phases[next]?.fromMs ?? Number.POSITIVE_INFINITY) >= beginsMs + minuteMs;
    const settled = begun?.phase === 'circulating' && beginsMs - begun.fromMs >= settledMin * minuteMs;
    const driven = drives[minute] ?? [];
    // Without a flow sensor nobody knows what a pump brings at part speed.
    const runs = driven.every(
      ({ outputs: { pumpFraction } }) => pumpFraction === 1 || (pumpFraction > 0 && flowLMin !== undefined),
    );
    steady[minute] = Number(settled && goesOn && driven.length > 0 && runs && steps[minute] !== 0);
  }
  return steady;
}
