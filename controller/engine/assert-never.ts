/** Marks what the types exclude. @throws Error when it is reached all the same. */
export function assertNever(value: never): never {
  throw new Error(`not possible: ${JSON.stringify(value)}`);
}
