import type { Alarm } from '../../shared-types/alarms.ts';
import type { Decision } from '../../shared-types/engine.ts';
import type { LogEvent } from '../../shared-types/log.ts';

/**
 * What happened between two decisions, each thing once.
 *
 * @param before - The decision before, or null for the first one of a run.
 * @param startedMs - Beginning of the run; an alarm that is older was told by the run before.
 */
export function eventsBetween(before: Decision | null, after: Decision, startedMs: number): LogEvent[] {
  const was = new Map(before?.alarms.map((alarm) => [alarm.code, alarm]));
  const is = new Map(after.alarms.map((alarm) => [alarm.code, alarm]));
  const gone = [...was.values()].filter((alarm) => alarm.active && !is.get(alarm.code)?.active);
  const changes = after.alarms.flatMap((alarm) => changesOf(was.get(alarm.code), alarm, before, startedMs));
  return [
    ...phaseEvents(before, after),
    ...changes.map(({ kind, alarm }) => alarmEvent(kind, alarm, after.nowMs)),
    ...gone.map((alarm) => alarmEvent('alarm-returned', is.get(alarm.code) ?? alarm, after.nowMs)),
    ...[...was.values()]
      .filter((alarm) => !is.has(alarm.code))
      .flatMap((alarm) => endingsOf(alarm).map((kind) => alarmEvent(kind, alarm, after.nowMs))),
    ...commissioningEvents(before, after),
  ];
}

function phaseEvents(before: Decision | null, after: Decision): LogEvent[] {
  if (before === null || before.phase === after.phase) return [];
  const { code, values, text } = after.reasons.phase;
  return [
    {
      atMs: after.nowMs,
      kind: 'phase-changed',
      text,
      values: { ...values, from: before.phase, to: after.phase, reason: code },
    },
  ];
}

interface Change {
  readonly kind: LogEvent['kind'];
  readonly alarm: Alarm;
}

function changesOf(
  was: Alarm | undefined,
  alarm: Alarm,
  before: Decision | null,
  startedMs: number,
): Change[] {
  const changes: Change[] = [];
  const isNew = before === null ? alarm.sinceMs >= startedMs : was?.active !== true;
  if (alarm.active && isNew) changes.push({ kind: 'alarm-raised', alarm });
  if (before === null || alarm.state === was?.state) return changes;
  if (alarm.state === 'acknowledged') changes.push({ kind: 'alarm-acknowledged', alarm });
  if (alarm.state === 'shelved') changes.push({ kind: 'alarm-shelved', alarm });
  if (was?.state === 'shelved') changes.push({ kind: 'alarm-unshelved', alarm });
  return changes;
}

/** What made an alarm normal that was over: it was seen, or its shelf ended. */
function endingsOf({ active, state }: Alarm): LogEvent['kind'][] {
  if (active) return [];
  return state === 'shelved' ? ['alarm-unshelved'] : ['alarm-acknowledged'];
}

/** The end of a commissioning run, with the result of each check by its name. */
function commissioningEvents(before: Decision | null, after: Decision): LogEvent[] {
  const run = after.commissioning;
  if (before === null || run === null || run.step === before.commissioning?.step) return [];
  if (run.step !== 'done' && run.step !== 'ended') return [];
  const values = Object.fromEntries(run.findings.map(({ check, result }) => [check, result]));
  const kind = run.step === 'done' ? 'commissioning-done' : 'commissioning-ended';
  return [{ atMs: after.nowMs, kind, text: run.text, values }];
}

const alarmEvent = (
  kind: LogEvent['kind'],
  { code, priority, text, values, shelvedUntilMs }: Alarm,
  atMs: number,
): LogEvent => ({
  atMs,
  kind,
  text,
  values: {
    ...values,
    alarm: code,
    priority,
    ...(kind === 'alarm-shelved' && shelvedUntilMs !== undefined ? { shelvedUntilMs } : {}),
  },
});
