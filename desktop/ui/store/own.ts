/**
 * An entry that a record really has. A site may be called `constructor`, which every object answers to
 * by itself.
 */
export function own<Value>(record: Readonly<Record<string, Value>>, key: string): Value | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
