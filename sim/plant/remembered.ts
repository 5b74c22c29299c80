/**
 * A function that keeps its newest results by the plain data that it was asked for: whoever tries many loops asks for
 * the same few tables again and again. What it gives is shared and must not be changed.
 *
 * @param most - How many are kept.
 */
export function remembered<Asked extends readonly unknown[], Result>(
  make: (...asked: Asked) => Result,
  most = 16,
): (...asked: Asked) => Result {
  const kept = new Map<string, Result>();
  return (...asked) => {
    const key = JSON.stringify(asked);
    const before = kept.get(key);
    if (before !== undefined) return before;
    const made = make(...asked);
    const oldest = kept.size < most ? undefined : kept.keys().next().value;
    if (oldest !== undefined) kept.delete(oldest);
    kept.set(key, made);
    return made;
  };
}
