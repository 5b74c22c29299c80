import type { z } from 'zod';
import type { Problem } from '../../shared-types/monitor-api.ts';

export type Severity = Problem['severity'];

/** A reply that brings a problem instead of a result. */
export interface Refusal {
  readonly ok: false;
  readonly problem: Problem;
}

export function refusal(severity: Severity, text: string, tip?: string): Refusal {
  return { ok: false, problem: tip === undefined ? { severity, text } : { severity, text, tip } };
}

/** The first thing that a schema found wrong, in one line: where, and what. */
export function firstIssue(error: z.ZodError): string {
  const [issue] = error.issues;
  if (issue === undefined) return 'not understood';
  const where = issue.path.join('.');
  return where === '' ? issue.message : `${where}: ${issue.message}`;
}

/** Words of whatever was thrown. */
export function wordsOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}
