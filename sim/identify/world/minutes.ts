import type { Channel } from '../../../shared-types/channels.ts';
import type { Outputs } from '../../../shared-types/engine.ts';

export const minuteMs = 60_000;

/** A stretch of time within one minute in which pump and drain did the same. */
export interface Drive {
  readonly endMs: number;
  readonly dtS: number;
  readonly outputs: Outputs;
}

/** Readings and drives of a span, minute by minute. */
export interface Minutes {
  readonly fromMs: number;
  readonly count: number;
  /** Mean of what was read well in each minute, in the channel's unit; not a number where nothing was. */
  readonly values: Readonly<Partial<Record<Channel, Float64Array>>>;
  /** Of each minute, one after another. */
  readonly drives: readonly (readonly Drive[])[];
  /** Steps that each minute holds; 0 where nothing was logged. */
  readonly steps: Uint16Array;
}

/** Takes what was read and done, in rising time, into minutes. */
export interface MinuteTaker {
  read(atMs: number, channel: Channel, value: number): void;
  /** @param fromMs, toMs - What the outputs did from one instant to another. */
  drive(fromMs: number, toMs: number, outputs: Outputs): void;
  step(atMs: number): void;
  minutes(): Minutes;
}

/** @param fromMs - A whole minute. @param count - Minutes of the span, 1 or more. */
export function createMinutes(fromMs: number, count: number): MinuteTaker {
  const sums = new Map<Channel, { readonly sum: Float64Array; readonly read: Uint16Array }>();
  const drives: Drive[][] = Array.from({ length: count }, () => []);
  const steps = new Uint16Array(count);
  // An instant belongs to the minute that it ends or lies in.
  const minuteOf = (atMs: number) => Math.ceil((atMs - fromMs) / minuteMs) - 1;

  return {
    read(atMs, channel, value) {
      const minute = minuteOf(atMs);
      if (minute < 0 || minute >= count) return;
      const taken = sums.get(channel) ?? { sum: new Float64Array(count), read: new Uint16Array(count) };
      sums.set(channel, taken);
      taken.sum[minute] = (taken.sum[minute] as number) + value;
      taken.read[minute] = (taken.read[minute] as number) + 1;
    },
    drive(from, to, outputs) {
      for (let atMs = Math.max(from, fromMs); atMs < to; ) {
        const minute = Math.floor((atMs - fromMs) / minuteMs);
        const here = drives[minute];
        if (here === undefined) return;
        const endMs = Math.min(to, fromMs + (minute + 1) * minuteMs);
        addDrive(here, endMs, (endMs - atMs) / 1000, outputs);
        atMs = endMs;
      }
    },
    step(atMs) {
      const minute = minuteOf(atMs);
      if (minute >= 0 && minute < count) steps[minute] = (steps[minute] as number) + 1;
    },
    minutes: () => ({ fromMs, count, values: meansOf(sums), drives, steps }),
  };
}

function addDrive(drives: Drive[], endMs: number, dtS: number, outputs: Outputs): void {
  const last = drives.at(-1);
  if (last === undefined || !alike(last.outputs, outputs)) drives.push({ endMs, dtS, outputs });
  else drives[drives.length - 1] = { endMs, dtS: last.dtS + dtS, outputs };
}

function alike(a: Outputs, b: Outputs): boolean {
  return (
    a.pumpFraction === b.pumpFraction &&
    a.drainOpen === b.drainOpen &&
    a.drainPumpOn === b.drainPumpOn &&
    a.exchangerPumpOn === b.exchangerPumpOn &&
    a.heatDumpOn === b.heatDumpOn
  );
}

function meansOf(
  sums: ReadonlyMap<Channel, { readonly sum: Float64Array; readonly read: Uint16Array }>,
): Partial<Record<Channel, Float64Array>> {
  const values: Partial<Record<Channel, Float64Array>> = {};
  // Nothing read divides nought by nought.
  for (const [channel, { sum, read }] of sums)
    values[channel] = sum.map((total, minute) => total / (read[minute] as number));
  return values;
}
