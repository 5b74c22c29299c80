import type { Channel } from '../../shared-types/channels.ts';
import type { Site } from '../../shared-types/site.ts';
import type { Fault } from '../plant/faults.ts';
import type { FaultWish, NamedFault } from './fault-text.ts';
import { instantOf, type LocalMoment } from './local-moment.ts';

/** Faults that are there or will be. A fault is the same as another of its name and channel. */
export interface FaultBoard {
  /** Puts a fault up from one instant of the device's clock on, and until another or for ever [UTC ms]. */
  raise(fault: NamedFault, fromMs: number, untilMs?: number): void;
  clear(fault: Pick<NamedFault, 'name' | 'channel'>): void;
  /** The faults that are there. Asked in each step, it makes nothing new while there is none. */
  activeAt(atMs: number): readonly Fault[];
}

interface Entry {
  readonly fault: NamedFault;
  readonly fromMs: number;
  readonly untilMs: number;
}

const noFaults: readonly Fault[] = [];

export function createFaultBoard(site: Pick<Site, 'sensors'>): FaultBoard {
  let entries: readonly Entry[] = [];
  const others = ({ name, channel }: Pick<NamedFault, 'name' | 'channel'>) =>
    entries.filter(({ fault }) => fault.name !== name || fault.channel !== channel);
  return {
    raise: (fault, fromMs, untilMs = Number.POSITIVE_INFINITY) => {
      entries = [...others(fault), { fault, fromMs, untilMs }];
    },
    clear: (fault) => {
      entries = others(fault);
    },
    activeAt: (atMs) => {
      let active: Fault[] | undefined;
      for (const { fault, fromMs, untilMs } of entries)
        if (atMs >= fromMs && atMs < untilMs) {
          active ??= [];
          const forS = (atMs - fromMs) / 1000;
          for (const channel of channelsOf(fault, site)) active.push({ ...fault, ...channel, forS });
        }
      return active ?? noFaults;
    },
  };
}

/** A topic that falls silent takes every channel along that it carries. */
function channelsOf(
  { name, channel }: NamedFault,
  { sensors }: Pick<Site, 'sensors'>,
): { channel?: Channel }[] {
  if (name !== 'topic-silent' || channel === undefined) return [{}];
  const topic = sensors[channel]?.topic;
  return (Object.keys(sensors) as Channel[])
    .filter((other) => other === channel || (topic !== undefined && sensors[other]?.topic === topic))
    .map((other) => ({ channel: other }));
}

/** Puts up what was wished for; what names no time is there from `fromMs` on. */
export function raiseWishes(
  board: FaultBoard,
  wishes: readonly FaultWish[],
  fromMs: number,
  timeZone: string,
): void {
  for (const { fault, from, until } of wishes) {
    const saidMs = from === null ? fromMs : comingMs(from, fromMs, timeZone);
    // Snow that fell before the beginning lies there at the beginning.
    const comesMs = fault.name === 'sheet-snowed' ? Math.max(fromMs, saidMs) : saidMs;
    if (until === null) board.raise(fault, comesMs);
    else board.raise(fault, comesMs, instantOf(until, comesMs, timeZone));
  }
}

/** A minute without a date that runs already comes now; one with a date may have been there for long. */
function comingMs(moment: LocalMoment, fromMs: number, timeZone: string): number {
  const atMs = instantOf(moment, fromMs, timeZone);
  return moment.date === null ? Math.max(fromMs, atMs) : atMs;
}
