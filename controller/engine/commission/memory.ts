import type {
  CommissioningCheck,
  CommissioningResult,
  CommissioningStep,
} from '../../../shared-types/commissioning.ts';
import { type Check, finiteOrNull, flag, isListOf, isValues, record } from '../checks.ts';
import { finite } from '../input.ts';
import type { Values } from '../known.ts';

/** What one check of a commissioning run came to. */
export interface Finding {
  readonly check: CommissioningCheck;
  readonly result: CommissioningResult;
  readonly values: Values;
}

/** Whether the device was seen to do what it was told. */
export interface Followed {
  readonly on: boolean;
  readonly off: boolean;
  readonly differed: boolean;
}

/** A commissioning run, or what the newest one has found. */
export interface CommissionMemory {
  readonly step: CommissioningStep;
  /** Instant at which the step began, and the one at which the whole has to be over [steady ms]. */
  readonly sinceMs: number;
  readonly untilMs: number;
  /** Time in which the pan was seen to fill in this run [s]. */
  readonly fillS: number | null;
  readonly followed: Followed;
  readonly findings: readonly Finding[];
}

const steps: ReadonlySet<unknown> = new Set<CommissioningStep>([
  'emptying',
  'filling',
  'flowing',
  'draining',
  'done',
  'ended',
]);
const checks: ReadonlySet<unknown> = new Set<CommissioningCheck>([
  'fill-time',
  'pump-direction',
  'sensors-agree',
  'drain-time',
  'outputs-follow',
  'outputs-drop',
]);
const results: ReadonlySet<unknown> = new Set<CommissioningResult>(['passed', 'failed', 'by-hand']);

const isFinding: Check = (value) => {
  const finding = record(value);
  return (
    finding !== null &&
    checks.has(finding['check']) &&
    results.has(finding['result']) &&
    isValues(finding['values'])
  );
};

/** True for the memory of a run, whatever it was before. */
export const isCommission: Check = (value) => {
  if (value === null) return true;
  const memory = record(value);
  if (memory === null) return false;
  const followed = record(memory['followed']);
  return (
    steps.has(memory['step']) &&
    finite(memory['sinceMs']) &&
    finite(memory['untilMs']) &&
    finiteOrNull(memory['fillS']) &&
    followed !== null &&
    flag(followed['on']) &&
    flag(followed['off']) &&
    flag(followed['differed']) &&
    isListOf(memory['findings'], isFinding)
  );
};

/** A step of a run that is under way. */
export type ActiveStep = Exclude<CommissioningStep, 'done' | 'ended'>;

/** A run that is under way. */
export type ActiveRun = CommissionMemory & { readonly step: ActiveStep };

/** True while a run is under way. */
export function isUnderWay(memory: CommissionMemory | null): memory is ActiveRun {
  return memory !== null && memory.step !== 'done' && memory.step !== 'ended';
}
