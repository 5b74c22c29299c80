/** The numbers in a reason or an alarm; names end in their unit. */
export type Values = Readonly<Record<string, number>>;

/** Leaves out what is not known. */
export function known(values: Readonly<Record<string, number | null>>): Values {
  const result: Record<string, number> = {};
  for (const name in values) {
    const value = values[name] ?? null;
    if (value !== null) result[name] = value;
  }
  return result;
}
