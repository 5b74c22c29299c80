import type { LogWriter } from '../log/log.ts';
import type { EngineState } from './engine.ts';

/** Time between two saved states [ms of the clock]. */
const everyMs = 600_000;

/** A point between two steps: the state after the step that is named. */
interface StatePoint {
  readonly state: EngineState;
  readonly step: number;
  readonly atMs: number;
  readonly steadyMs: number;
}

/** Saves states so often that a restart or a replay has little to run again. */
export interface StateKeeper {
  /** Called before each step with the state before it and the day that the step belongs to. */
  before(point: StatePoint, day: string): void;
  save(point: StatePoint): void;
}

export function createStateKeeper(log: LogWriter, run: number, engineVersion: string): StateKeeper {
  let savedAtMs = Number.NEGATIVE_INFINITY;
  let day: string | undefined;
  let wasWritable = log.writable;

  function save({ state, step, atMs, steadyMs }: StatePoint): void {
    log.saveState({ atMs, run, step, engineVersion, state });
    savedAtMs = steadyMs;
  }

  return {
    before(point, dayOfStep) {
      // A log that could not be written for a while lacks steps: only a state bridges them.
      const bridged = log.writable && !wasWritable;
      wasWritable = log.writable;
      const isNewDay = day !== undefined && day !== dayOfStep;
      day = dayOfStep;
      if (bridged || isNewDay || point.steadyMs - savedAtMs >= everyMs) save(point);
    },
    save,
  };
}
