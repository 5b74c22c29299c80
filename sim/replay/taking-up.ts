import { type EngineState, initialState, reviveState, stepOn } from '../../controller/engine/index.ts';
import type { LogReader } from '../../controller/log/log.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Rules } from './rules.ts';

/** The engine's state just before a record, and what it could be taken from. */
export type TakenUp =
  | { readonly from: 'saved'; readonly state: EngineState }
  | { readonly from: 'before-gap' | 'nothing'; readonly state: EngineState };

/**
 * Finds the state that the engine had before a record: the newest saved one of its run, carried
 * through the records in between. Without one the state before the gap goes on, as in a controller that
 * resumes from its log; failing that, the engine begins anew.
 */
export function takeUp(
  reader: LogReader,
  record: LogRecord,
  rules: Rules,
  stateBefore: EngineState | undefined,
): TakenUp {
  const saved = reader.stateBefore(record.run, record.step - 1);
  const revived = saved === null ? undefined : reviveState(saved.state);
  if (saved === null || revived === undefined)
    return stateBefore === undefined
      ? { from: 'nothing', state: initialState() }
      : { from: 'before-gap', state: stateBefore };
  const between = reader.between(record.run, saved.step, record.step);
  return { from: 'saved', state: carryThrough(revived, between, rules) };
}

/** The state after logged records. Those whose rules are gone cannot be run and are left out. */
export function carryThrough(from: EngineState, records: Iterable<LogRecord>, rules: Rules): EngineState {
  let state = from;
  for (const record of records) {
    const rule = rules.of(record);
    if (rule !== undefined) ({ state } = stepOn(state, record.input, rule.site, rule.settings));
  }
  return state;
}
