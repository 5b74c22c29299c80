import { type Channel, channelMeaning } from '../../shared-types/channels.ts';
import type { Conditions } from '../weather/conditions.ts';
import { hashFraction, hashNormal } from '../weather/random.ts';
import { type Fault, partFault } from './faults.ts';
import { numberOf } from './makes.ts';

const dayS = 86_400;

/** Picks the chances of one reading. */
interface Draw {
  readonly seed: number;
  readonly reading: number;
}

/** Streams of chances, one a kind; those of weather and healthy noise are smaller numbers. */
const stream = { noisy: 300, spiking: 400, intermittent: 500 } as const;
const spikeFraction = 0.1;

/** True while the device sends no reading at all. */
export function nothingIsSent(faults: readonly Fault[]): boolean {
  return partFault(faults, 'device-silent') !== undefined || partFault(faults, 'power-cut') !== undefined;
}

/** What acts on the body of a sensor: fallen off it feels the air, in the sun it is warmed. */
export function faultyTruth(
  truth: number,
  channel: Channel,
  faults: readonly Fault[],
  { airC, irradianceWM2 }: Conditions,
): number {
  let value = truth;
  for (const fault of faults) {
    if (fault.channel !== channel) continue;
    if (fault.name === 'sensor-loose') value += fault.size * (restingValue(channel, airC) - value);
    if (fault.name === 'sensor-sunlit') value += (fault.size * irradianceWM2) / 1000;
  }
  return value;
}

/** What a sensor feels that has fallen off its place: the air, and nothing where it is no thermometer. */
function restingValue(channel: Channel, airC: number): number {
  return channelMeaning[channel].unit === 'C' ? airC : 0;
}

/** How many times as slowly a sensor follows. */
export function slownessOf(channel: Channel, faults: readonly Fault[]): number {
  let times = 1;
  for (const fault of faults)
    if (fault.name === 'sensor-slow' && fault.channel === channel) times = fault.size;
  return times;
}

/** The channel whose sensor hangs on the wires of this one. */
export function wiredTo(channel: Channel, faults: readonly Fault[]): Channel {
  for (const { name, channel: one, other } of faults) {
    if (name !== 'sensors-swapped' || one === undefined || other === undefined) continue;
    if (one === channel) return other;
    if (other === channel) return one;
  }
  return channel;
}

/** What a sensor says with its faults, undefined when nothing. */
export function faultyValue(
  healthy: number,
  shownBefore: number,
  channel: Channel,
  faults: readonly Fault[],
  draw: Draw,
): number | 'open-circuit' | 'short-circuit' | undefined {
  let value = healthy;
  for (const fault of faults) {
    if (fault.channel !== channel) continue;
    switch (fault.name) {
      case 'sensor-open':
        return 'open-circuit';
      case 'sensor-short':
        return 'short-circuit';
      case 'sensor-silent':
      case 'topic-silent':
        return undefined;
      case 'sensor-intermittent':
        if (chanceOf(stream.intermittent, channel, draw) < fault.size) return undefined;
        break;
      case 'sensor-stuck':
        return shownBefore;
      default:
        value += errorOf(fault, channel, draw);
    }
  }
  return value;
}

/** What a fault adds to a value. */
function errorOf({ name, size, forS }: Fault, channel: Channel, draw: Draw): number {
  switch (name) {
    case 'sensor-offset':
      return size;
    case 'sensor-drifting':
      return (size * forS) / dayS;
    case 'sensor-noisy':
      return size * hashNormal(draw.seed, stream.noisy + numberOf[channel], draw.reading);
    case 'sensor-spiking':
      return chanceOf(stream.spiking, channel, draw) < spikeFraction ? size : 0;
    default:
      return 0;
  }
}

function chanceOf(kind: number, channel: Channel, { seed, reading }: Draw): number {
  return hashFraction(seed, kind + numberOf[channel], reading);
}
