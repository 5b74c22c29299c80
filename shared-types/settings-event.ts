import type { LogEvent } from './log.ts';
import { type SettingName, type Settings, settingNames } from './settings.ts';

/** One setting of a change, as the log keeps it. */
export interface SettingChange {
  readonly name: SettingName;
  /** Null in a log from before this was kept. */
  readonly before: number | null;
  readonly after: number;
}

const beforeKey = (name: SettingName) => `before.${name}`;

/** What the event of a change keeps of some settings: each as it is from then on, and as it was before. */
export function changedValues(
  before: Settings,
  after: Settings,
  names: readonly SettingName[],
): Record<string, number> {
  return Object.fromEntries(
    names.flatMap((name) => [
      [name, after[name]],
      [beforeKey(name), before[name]],
    ]),
  );
}

/** The settings that an event changed; none for an event of another kind. */
export function settingChangesOf({ kind, values }: LogEvent): readonly SettingChange[] {
  if (kind !== 'settings-changed') return [];
  return settingNames.flatMap((name) => {
    const after = values[name];
    const before = values[beforeKey(name)];
    if (typeof after !== 'number') return [];
    return [{ name, before: typeof before === 'number' ? before : null, after }];
  });
}
