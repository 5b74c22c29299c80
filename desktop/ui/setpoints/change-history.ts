import type { LogEvent } from '../../../shared-types/log.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import { type SettingChange, settingChangesOf } from '../../../shared-types/settings-event.ts';
import { en } from '../text/en.ts';

/** A change of settings as the log tells it. */
export interface PastChange {
  readonly atMs: number;
  readonly who: string;
  readonly revision: number | null;
  readonly changes: readonly SettingChange[];
}

/** The changes among events, in the events' order. */
export function pastChanges(events: readonly LogEvent[]): readonly PastChange[] {
  return events.flatMap((event) => {
    const changes = settingChangesOf(event);
    if (changes.length === 0) return [];
    const { who, revision } = event.values;
    return [
      {
        atMs: event.atMs,
        who: typeof who === 'string' ? who : en.setpoints.history.unknown,
        revision: typeof revision === 'number' ? revision : null,
        changes,
      },
    ];
  });
}

/** What undoing takes: the values from before; or why it cannot be done. */
export type Undo =
  | { readonly kind: 'possible'; readonly values: Partial<Settings> }
  | { readonly kind: 'done' }
  | { readonly kind: 'unknown' };

export function undoOf({ changes }: PastChange, inForce: Settings): Undo {
  if (changes.some(({ before }) => before === null)) return { kind: 'unknown' };
  const values: Partial<Settings> = {};
  for (const { name, before } of changes)
    if (before !== null && before !== inForce[name]) values[name] = before;
  return Object.keys(values).length === 0 ? { kind: 'done' } : { kind: 'possible', values };
}
