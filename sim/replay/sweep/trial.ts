import type { Settings } from '../../../shared-types/settings.ts';

/** What a day would have brought under certain settings. */
export interface Tried {
  /** Heat home in the best-known loop, then in loops drawn from what is uncertain of it, in the same order for all settings [J]. */
  readonly heatHomeJ: readonly [number, ...number[]];
  readonly electricityJ: number;
  readonly starts: number;
  readonly fills: number;
  /** How far above 0 °C the coldest water of the pan stayed [K]; null when there was none. */
  readonly aboveFreezingK: number | null;
  /** The most ice that the pan held [kg]: with any, the coldest water is at 0 °C. */
  readonly mostIceKg: number;
  /** How far below the liner's limit the hottest of the pan stayed [K]. */
  readonly belowLinerLimitK: number | null;
  /** How long the loop was where the log of the day never was, in the best-known loop [s]. */
  readonly beyondLogS: number;
}

/** A logged day that stands ready to be lived under any settings. */
export interface ReadyDay {
  /** The same settings give the same outcome to the last bit. */
  evaluate(settings: Settings): Tried;
  readonly remarks: readonly string[];
}

/** Makes a day ready: costly, once a day. */
export type ReadyOrNot =
  | { readonly ok: true; readonly ready: ReadyDay }
  | { readonly ok: false; readonly why: string };
