import type { Channel } from '../../../shared-types/channels.ts';
import { minuteMs } from '../world/minutes.ts';
import { settledPhases } from '../world/phases.ts';
import { inTheDark, type Stretch } from './stretch.ts';

/** What of the loop is compared with what the plant gives. */
const comparable = [
  'panSheetC',
  'panOutletC',
  'panInletC',
  'reservoirC',
  'panLevelMm',
  'flowLMin',
] as const satisfies readonly Channel[];

/** A channel's measured values, block by block; only blocks in which enough was measured. */
export interface ComparedChannel {
  readonly channel: Channel;
  /** Number of the block of each value, rising. */
  readonly blocks: readonly number[];
  readonly measured: readonly number[];
  /** Minutes that go into each value. */
  readonly minutes: readonly (readonly number[])[];
}

/** Minutes that are compared as one: shorter ones follow clouds and steps. A design choice. */
export const blockMin = 10;
const leastMinutes = 5;
/** After pump or drain changed so long nothing is compared [min]: filling, air and sensors settle. A design choice. */
const settleMin = 10;

/** Finds what of a day can be compared: all that is measured while the loop does the same for some time. */
export function comparedOf(stretch: Stretch): ComparedChannel[] {
  const { values } = stretch.span.minutes;
  const settled = settledMinutes(stretch);
  return comparable.flatMap((channel) => {
    const column = values[channel];
    if (column === undefined) return [];
    const own = channel === 'panInletC' ? settled.filter((minute) => pumped(stretch, minute)) : settled;
    const compared = blocksOf(channel, column, own);
    return compared.blocks.length === 0 ? [] : [compared];
  });
}

/** At rest the inlet's thermometer shows pipe or pan, as the last of the water happens to stand. */
function pumped({ span }: Stretch, minute: number): boolean {
  return (span.minutes.drives[minute]?.[0]?.outputs.pumpFraction ?? 0) > 0;
}

function blocksOf(channel: Channel, column: Float64Array, settled: readonly number[]): ComparedChannel {
  const own = settled.filter((minute) => !Number.isNaN(column[minute]));
  const byBlock = [...Map.groupBy(own, (minute) => Math.floor(minute / blockMin))].filter(
    ([, minutes]) => minutes.length >= leastMinutes,
  );
  return {
    channel,
    blocks: byBlock.map(([block]) => block),
    measured: byBlock.map(([, minutes]) => meanOver(column, minutes)),
    minutes: byBlock.map(([, minutes]) => minutes),
  };
}

export function meanOver(column: Float64Array, minutes: readonly number[]): number {
  let sum = 0;
  for (const minute of minutes) sum += column[minute] as number;
  return sum / minutes.length;
}

/** Minutes in which the loop has done the same for a while, and the log was written. */
function settledMinutes(stretch: Stretch): number[] {
  const { span, comparedFrom } = stretch;
  const { minutes, phases } = span;
  const settled: number[] = [];
  let sameFor = 0;
  for (let minute = 1; minute < minutes.count; minute++) {
    const drives = minutes.drives[minute] ?? [];
    const before = minutes.drives[minute - 1] ?? [];
    const same = drives.length === 1 && drives[0]?.outputs.pumpFraction === before[0]?.outputs.pumpFraction;
    const drainSame = drives[0]?.outputs.drainOpen === before[0]?.outputs.drainOpen;
    const logged = (minutes.steps[minute] ?? 0) > 0;
    sameFor = same && drainSame && logged ? sameFor + 1 : 0;
    if (minute < comparedFrom || sameFor < settleMin) continue;
    if (!stretch.sunMeasured && !inTheDark(stretch, minute)) continue;
    const endMs = minutes.fromMs + (minute + 1) * minuteMs;
    const phase = phases.findLast(({ fromMs }) => fromMs <= endMs - settleMin * minuteMs)?.phase;
    if (phase !== undefined && settledPhases.includes(phase)) settled.push(minute);
  }
  return settled;
}
