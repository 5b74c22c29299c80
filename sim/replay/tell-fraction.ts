/** Tells on the terminal how much is done; says nothing where nobody looks on. @returns true: go on. */
export function tellFraction(doneFraction: number): boolean {
  if (process.stderr.isTTY)
    process.stderr.write(`\r${(100 * doneFraction).toFixed(0).padStart(3)} %${doneFraction < 1 ? '' : '\n'}`);
  return true;
}
