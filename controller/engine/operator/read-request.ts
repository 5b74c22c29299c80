import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { Operation, OperatorRequest } from '../../../shared-types/engine.ts';
import { finite, loose } from '../input.ts';

const idForm = /^[A-Za-z0-9-]{8,64}$/;

/** @returns undefined when what was given is no request. */
export function readRequest(given: unknown): OperatorRequest | undefined {
  const { id, ageMs, lifeMs, operation: asked } = loose(given);
  const operation = readOperation(asked);
  if (typeof id !== 'string' || !idForm.test(id) || operation === undefined) return undefined;
  if (!finite(ageMs) || !finite(lifeMs) || lifeMs < 1000 || lifeMs > 60_000) return undefined;
  return { id, ageMs, lifeMs, operation };
}

function readOperation(given: unknown): Operation | undefined {
  const { kind, minutes, alarm } = loose(given);
  switch (kind) {
    case 'empty':
    case 'automatic':
    case 'commission':
    case 'confirm':
      return { kind };
    case 'run-pump':
      return within(minutes, 1, 120) ? { kind, minutes } : undefined;
    case 'rest':
      return within(minutes, 1, 1440) ? { kind, minutes } : undefined;
    case 'acknowledge':
    case 'unshelve':
      return isAlarm(alarm) ? { kind, alarm } : undefined;
    case 'shelve':
      return isAlarm(alarm) && within(minutes, 5, 1440) ? { kind, alarm, minutes } : undefined;
  }
  return undefined;
}

function within(value: unknown, least: number, most: number): value is number {
  return finite(value) && value >= least && value <= most;
}

function isAlarm(value: unknown): value is AlarmCode {
  return typeof value === 'string' && Object.hasOwn(alarmCatalogue, value);
}
