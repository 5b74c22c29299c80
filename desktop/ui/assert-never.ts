/** The end of a switch that names every case: reached only when data breaks its type. */
export function assertNever(value: never): never {
  throw new Error(`unexpected value ${JSON.stringify(value)}`);
}
