import type { Settings } from '../../../shared-types/settings.ts';
import type { PossibleLoop } from '../../identify/possible-loop.ts';
import type { Unit } from './queue.ts';
import type { ReadyOrNot, Tried } from './trial.ts';

/** What a worker of a sweep is given at its start. */
export interface WorkerTask {
  readonly logPath: string;
  readonly days: readonly string[];
  readonly settings: readonly Settings[];
  /** The best-known loop, then loops drawn from what is uncertain of it. */
  readonly loops: readonly PossibleLoop[];
  readonly seed: number;
}

/** What a worker answers to a unit: what it found, one after another, and an end. */
export type Answer =
  | {
      readonly kind: 'day';
      readonly day: number;
      readonly why: string | null;
      readonly remarks: readonly string[];
    }
  | { readonly kind: 'tried'; readonly day: number; readonly point: number; readonly tried: Tried }
  | { readonly kind: 'done' };

/** Does the work of units; keeps the day that it made ready last. */
export function createTeller(
  makeReady: (day: number) => ReadyOrNot,
  settings: readonly Settings[],
  tell: (answer: Answer) => void,
): (unit: Unit) => void {
  let held: { day: number; made: ReadyOrNot } | undefined;
  return ({ day, points }) => {
    if (held?.day !== day) {
      held = { day, made: makeReady(day) };
      const { made } = held;
      tell({ kind: 'day', day, why: made.ok ? null : made.why, remarks: made.ok ? made.ready.remarks : [] });
    }
    const { made } = held;
    if (made.ok)
      for (const point of points)
        tell({ kind: 'tried', day, point, tried: made.ready.evaluate(settings[point] as Settings) });
    tell({ kind: 'done' });
  };
}
