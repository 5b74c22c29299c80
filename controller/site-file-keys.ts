import { z } from 'zod';

/** As much of a JSON Schema as tells which keys stand where. */
interface Form {
  readonly properties?: Readonly<Record<string, Form>>;
  readonly propertyNames?: { readonly enum?: readonly string[] };
  readonly additionalProperties?: Form | boolean;
  readonly items?: Form;
  readonly oneOf?: readonly Form[];
  readonly anyOf?: readonly Form[];
}

type Path = readonly PropertyKey[];

/** Keys that a file of a schema may have at a path, all forms of that part taken together. */
export function knownKeysAt(path: Path, schema: z.ZodType): string[] {
  let forms = [z.toJSONSchema(schema, { io: 'input' }) as Form];
  for (const part of path) forms = forms.flatMap(alternatives).flatMap((form) => formBelow(form, part));
  const keys = forms
    .flatMap(alternatives)
    .flatMap((form) => [...Object.keys(form.properties ?? {}), ...(form.propertyNames?.enum ?? [])]);
  return [...new Set(keys)];
}

const alternatives = (form: Form): readonly Form[] => form.oneOf ?? form.anyOf ?? [form];

function formBelow(form: Form, part: PropertyKey): Form[] {
  if (typeof part === 'number') return form.items === undefined ? [] : [form.items];
  const properties = form.properties ?? {};
  const below = Object.hasOwn(properties, part) ? properties[String(part)] : form.additionalProperties;
  return typeof below === 'object' ? [below] : [];
}

/** The known key that was most likely meant, or undefined when none is near. */
export function nearestKey(key: string, known: readonly string[]): string | undefined {
  const near = known
    .map((candidate) => ({ candidate, distance: editDistance(key.toLowerCase(), candidate.toLowerCase()) }))
    .sort((a, b) => a.distance - b.distance)[0];
  return near !== undefined && near.distance <= Math.max(2, key.length / 3) ? near.candidate : undefined;
}

/**
 * Letters to insert, delete or replace to make one word of the other.
 *
 * Source: V. I. Levenshtein, Soviet Physics Doklady 10 (1966) 707; computed row by row (common practice).
 */
function editDistance(from: string, to: string): number {
  // A hostile key may be long; nothing that long is near a known one.
  if (from.length > 100) return from.length;
  let row = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (const [index, letter] of [...from].entries()) {
    const next = [index + 1];
    for (let column = 1; column <= to.length; column++) {
      const replaced = (row[column - 1] as number) + (letter === to[column - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[column] as number) + 1, (next[column - 1] as number) + 1));
    }
    row = next;
  }
  return row[to.length] as number;
}
