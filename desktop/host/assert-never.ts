/** Marks a branch that no value can reach; the compiler objects when one can. */
export function assertNever(value: never): never {
  throw new TypeError(`unexpected value ${JSON.stringify(value)}`);
}
