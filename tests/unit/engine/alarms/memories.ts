import type { AlarmMemory } from '../../../../controller/engine/state.ts';

/** An alarm that stands and was not seen yet, but for what is given. */
export function alarmOf(changes: Partial<AlarmMemory> = {}): AlarmMemory {
  return {
    ...{ changingMs: null, active: true, acknowledged: false, raisedMs: 70, activeSinceMs: 50 },
    ...{ returnedMs: null, repeats: 0, head: null, shelvedUntilMs: null, shelvedUntilUtcMs: null },
    ...{ values: {}, text: 'It stands.' },
    ...changes,
  };
}

/** One that returned and was seen: it is listed no more. */
export const over = alarmOf({ active: false, acknowledged: true });
