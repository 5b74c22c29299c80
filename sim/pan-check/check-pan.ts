import type { LogReader } from '../../controller/log/log.ts';
import type { PanCheck } from '../../shared-types/pan-check.ts';
import type { LoopFit } from '../../shared-types/tuning.ts';

export interface PanCheckOptions {
  /** Kept days that are looked at. */
  readonly days: readonly string[];
  /** Days that the others are compared with; none: the oldest of `days`. */
  readonly referenceDays: readonly string[];
  /** Where what wind does is known from; null: usual values. */
  readonly fit: LoopFit | null;
  /** Told how far it is, 0 to 1; false gives up. */
  readonly goOn?: (doneFraction: number) => boolean;
}

export type PanChecked =
  | { readonly ok: true; readonly check: PanCheck }
  | { readonly ok: false; readonly why: readonly string[] };

/** Looks whether a pan gathers and loses as it did. */
export function checkPan(_reader: LogReader, _options: PanCheckOptions): PanChecked | undefined {
  return { ok: false, why: ['not there yet'] };
}
