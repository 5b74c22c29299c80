import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { PhaseName } from '../../../shared-types/engine.ts';
import type { ResponseName } from './responses.ts';

/** How the loop comes back once the failure is gone. */
export type Recovery =
  /** By itself, within this time after the failure has gone [s]. */
  | { readonly by: 'itself'; readonly withinS: number }
  /** Not before a person asks for automatic; then within this time [s]. */
  | { readonly by: 'person'; readonly withinS: number };

/** One failure in a simulated loop, and what it has to lead to. */
export interface FailureRow {
  readonly failure: string;
  /** Scenario that gives site, weather and water; its own faults are left out. */
  readonly scene: string;
  /** What goes wrong, as `NAME[:CHANNEL[/OTHER]][=SIZE]`; nothing where the weather is what goes wrong. */
  readonly faults: readonly string[];
  /** Local time at which it does, first after the beginning of the scene; then how long it lasts and is watched [h]. */
  readonly at: string;
  /** It waits until the healthy loop has been in this phase for a while. */
  readonly in?: PhaseName;
  readonly lastsH?: number;
  readonly watchH: number;
  /** Alarm at the head of all that is announced, and how soon; null: nothing is announced at all. */
  readonly head: AlarmCode | null;
  readonly detectedWithinS?: number;
  /** What the outputs do, and how soon. */
  readonly response: ResponseName;
  readonly respondedWithinS: number;
  /** The response holds at every moment after that, as long as the row is watched. */
  readonly throughout?: true;
  /** Least share of the healthy loop's harvest that is brought home while the row is watched. */
  readonly harvestAtLeast?: number;
  /** Left out where there is nothing to recover from. */
  readonly recovery?: Recovery;
  /** Coldest that water in a pan that holds any may become [°C]. */
  readonly panAtLeastC?: number;
  /** Most ice that may be found in the pan [kg]; none where it is left out. */
  readonly iceAtMostKg?: number;
  /** What a person does. */
  readonly person: string;
}

/** A failure around the loop, rehearsed by another test of the daemon or the engine. */
export interface ElsewhereRow {
  readonly failure: string;
  readonly file: string;
  /** Title of the test in that file. */
  readonly test: string;
  readonly person: string;
}
