import type { Channel } from '../../../../shared-types/channels.ts';
import type { TrustedReadings } from '../../../../shared-types/readings.ts';
import type { Situation } from '../../situation.ts';
import type { WatchMemory } from '../../state.ts';
import { usable } from '../facts.ts';

/** A sensor whose second difference is this large on the mean is noisy, and below that it no longer is [K]. */
const noisyK = 1.5;
const quietK = 0.75;

/** Before this a sensor that shows the same is not looked at closer [ms]. */
const closerMs = 600_000;

/**
 * How long a sensor has to show the same, and how far another has to go meanwhile, before it counts as stuck.
 * Design choices: where a coarse sensor may well show the same for long, more is asked.
 */
interface StuckRule {
  readonly channel: Channel;
  readonly stuckMs: number;
  /** The same while the pan is full of water, of which none stands still for long. */
  readonly inWaterMs: number;
  readonly movedK: number;
  readonly witnesses: readonly Channel[];
  /** The witnesses see the same water only while it circulates. */
  readonly circulating: boolean;
}

const halfHourMs = 1_800_000;
const hourMs = 2 * halfHourMs;

function ofPan(channel: Channel, witnesses: readonly Channel[]): StuckRule {
  return { channel, stuckMs: 3 * hourMs, inWaterMs: halfHourMs, movedK: 6, witnesses, circulating: false };
}

function ofStream(channel: Channel, witnesses: readonly Channel[]): StuckRule {
  const stuckMs = 3 * hourMs;
  return { channel, stuckMs, inWaterMs: stuckMs, movedK: 10, witnesses, circulating: true };
}

const rules: readonly StuckRule[] = [
  ofPan('panOutletC', ['panSheetC', 'panInletC', 'ambientC']),
  ofPan('panSheetC', ['panOutletC', 'panInletC', 'ambientC']),
  ofStream('panInletC', ['storeBottomC', 'reservoirC', 'panOutletC']),
  ofStream('storeBottomC', ['panInletC', 'panOutletC', 'panSheetC']),
  ofStream('reservoirC', ['panInletC', 'panOutletC', 'panSheetC']),
  {
    channel: 'ambientC',
    stuckMs: 12 * hourMs,
    inWaterMs: 12 * hourMs,
    movedK: 15,
    witnesses: ['panSheetC', 'panOutletC'],
    circulating: false,
  },
];

/** What the witnesses of every sensor that shows the same for long went through meanwhile. */
export function updateStill({ state, readings, runMs }: Situation): WatchMemory['still'] {
  const { sensing, watch, phase } = state;
  let still: WatchMemory['still'] = {};
  for (const { channel, witnesses, circulating } of rules) {
    const memory = sensing[channel];
    if (memory === undefined || runMs - memory.changedMs < closerMs) continue;
    const before = watch.still[channel];
    const valueC = firstSaid(witnesses, readings);
    const seen = valueC !== null && (!circulating || phase.name === 'circulating');
    const now = seen
      ? { lowC: Math.min(before?.lowC ?? valueC, valueC), highC: Math.max(before?.highC ?? valueC, valueC) }
      : before;
    if (now !== undefined) still = { ...still, [channel]: now };
  }
  return still;
}

function firstSaid(channels: readonly Channel[], readings: TrustedReadings): number | null {
  for (const channel of channels) {
    const valueC = usable(readings[channel]);
    if (valueC !== null) return valueC;
  }
  return null;
}

/** True when a sensor stands still to the last digit while it should have moved. */
export function isStuck(channel: Channel, still: WatchMemory['still'], { state, runMs }: Situation): boolean {
  const range = still[channel];
  // Nothing is noted of one that moves, as nearly all do.
  if (range === undefined) return false;
  const memory = state.sensing[channel];
  const rule = rules.find((candidate) => candidate.channel === channel);
  if (memory === undefined || rule === undefined) return false;
  const leastMs = state.water.level === 'full' ? rule.inWaterMs : rule.stuckMs;
  return runMs - memory.changedMs >= leastMs && range.highC - range.lowC >= rule.movedK;
}

/** True when a sensor scatters more than such a sensor may. */
export function isNoisy(channel: Channel, { state }: Situation): boolean {
  const { scatter = 0 } = state.sensing[channel] ?? {};
  return scatter >= (state.watch.doubts[channel]?.cause === 'noisy' ? quietK : noisyK);
}
