import type { Decision } from '../shared-types/engine.ts';
import type { LogEvent } from '../shared-types/log.ts';

/** What changed from one decision to the next and is worth a line in the log. */
export function eventsBetween(before: Decision | undefined, after: Decision): LogEvent[] {
  const events: LogEvent[] = [];
  const add = (kind: LogEvent['kind'], text: string, values: LogEvent['values']) =>
    events.push({ atMs: after.nowMs, kind, text, values });
  if (before?.phase !== after.phase)
    add('phase-changed', after.reasons.phase.text, { phase: after.phase, from: before?.phase ?? null });
  const was = activeCodes(before);
  const is = activeCodes(after);
  for (const alarm of after.alarms)
    if (alarm.active && !was.has(alarm.code)) add('alarm-raised', alarm.text, { alarm: alarm.code });
  for (const code of was)
    if (!is.has(code)) add('alarm-returned', `The cause of ${code} is gone.`, { alarm: code });
  return events;
}

function activeCodes(decision: Decision | undefined): Set<string> {
  return new Set(decision?.alarms.filter((alarm) => alarm.active).map((alarm) => alarm.code));
}
