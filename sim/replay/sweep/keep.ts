import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import type { DayResult, Results } from './results.ts';

const triedSchema = z.strictObject({
  heatHomeJ: z.tuple([z.number()], z.number()),
  electricityJ: z.number(),
  starts: z.number(),
  fills: z.number(),
  aboveFreezingK: z.number().nullable(),
  belowLinerLimitK: z.number().nullable(),
  beyondLogS: z.number(),
});

const keptSchema = z.strictObject({
  schemaVersion: z.literal(1),
  /** Tells this sweep from any other. */
  plan: z.string(),
  days: z.array(
    z.strictObject({
      why: z.string().nullable(),
      remarks: z.array(z.string()),
      tried: z.array(triedSchema.nullable()),
    }),
  ),
});

/** What an interrupted sweep has found by now. It is put in place as a whole, or not at all. */
export function keepResults(path: string, plan: string, days: Results): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(`${path}.new`, JSON.stringify({ schemaVersion: 1, plan, days }));
  renameSync(`${path}.new`, path);
}

/**
 * Reads back what was kept of the same plan; undefined when nothing was kept.
 *
 * @throws RangeError when the file is another sweep's, or none at all: it is never written over.
 */
export function keptResults(path: string, plan: string): DayResult[] | undefined {
  const text = textOf(path);
  if (text === undefined) return undefined;
  const kept = keptSchema.safeParse(jsonOf(text)).data;
  if (kept === undefined) throw new RangeError(`${path} is no file of an interrupted sweep`);
  if (kept.plan !== plan)
    throw new RangeError(
      `${path} is of another sweep: of other days, ranges or settings, of another loop, or of days whose log has ` +
        'changed since; give another file',
    );
  return kept.days;
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch (thrown) {
    if (thrown instanceof Error && 'code' in thrown && thrown.code === 'ENOENT') return undefined;
    throw new RangeError(`${path} cannot be read: ${thrown instanceof Error ? thrown.message : thrown}`);
  }
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
