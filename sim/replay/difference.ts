import type { Outcome } from '../../shared-types/log.ts';

/**
 * Names of the fields in which two outcomes differ, such as `outputs.pumpFraction`; empty when they are
 * the same to the last bit. Lists count as one field and their order counts.
 */
export function differingFields(logged: Outcome, replayed: Outcome): string[] {
  const fields: string[] = [];
  if (logged.phase !== replayed.phase) fields.push('phase');
  for (const group of ['outputs', 'reasons', 'total'] as const) {
    const a: Readonly<Record<string, unknown>> = logged[group];
    const b: Readonly<Record<string, unknown>> = replayed[group];
    for (const key of new Set([...Object.keys(a), ...Object.keys(b)]))
      if (!Object.is(a[key], b[key])) fields.push(`${group}.${key}`);
  }
  if (logged.alarms.join() !== replayed.alarms.join()) fields.push('alarms');
  if (logged.failed.join() !== replayed.failed.join()) fields.push('failed');
  return fields;
}

/** The reason that speaks for a difference: that of the output that differs, else that of the phase. */
export function speakingReason(fields: readonly string[]): keyof Outcome['reasons'] {
  if (fields.includes('phase') || fields.includes('reasons.phase')) return 'phase';
  if (fields.includes('outputs.pumpFraction') || fields.includes('reasons.pump')) return 'pump';
  if (fields.includes('outputs.drainOpen') || fields.includes('reasons.drain')) return 'drain';
  return 'phase';
}
