import type { Channel } from '../../shared-types/channels.ts';
import type { UnderstoodRow } from '../../shared-types/foreign-log.ts';

/** The newest value of something, and when it was written. */
interface Written<Value> {
  readonly value: Value;
  readonly atMs: number;
}

/** What the newest rows said of each thing. */
export interface Held {
  readonly values: Readonly<Partial<Record<Channel, Written<number>>>>;
  readonly outputs:
    | Written<{ readonly pumpFraction: number; readonly drainOpen: boolean | null }>
    | undefined;
}

export const nothingHeld: Held = { values: {}, outputs: undefined };

/**
 * What is known at a sample: a logger that leaves a cell empty said nothing new.
 *
 * @param holdMs - A value that is older counts no more [ms].
 */
export function heldAt(before: Held, sample: UnderstoodRow, holdMs: number): Held {
  const { atMs, pumpFraction, drainOpen } = sample;
  const young = <Value>(written: Written<Value> | undefined) =>
    written !== undefined && atMs - written.atMs <= holdMs;
  const values: Partial<Record<Channel, Written<number>>> = {};
  for (const [channel, written] of Object.entries(before.values))
    if (young(written)) values[channel as Channel] = written;
  for (const [channel, value] of Object.entries(sample.values)) values[channel as Channel] = { value, atMs };
  const told = pumpFraction === null ? before.outputs : { value: { pumpFraction, drainOpen }, atMs };
  return { values, outputs: young(told) ? told : undefined };
}
