/**
 * Waits until `condition` gives something else than undefined, null or false, and returns it.
 *
 * @param what - What is waited for; part of the error.
 * @param deadlineMs - Generous by default: it decides that something will never come, not how fast it came.
 * @throws when the deadline passes.
 */
export async function until<T>(
  what: string,
  condition: () => T | Promise<T>,
  deadlineMs = 30_000,
): Promise<NonNullable<T>> {
  const endMs = performance.now() + deadlineMs;
  for (;;) {
    const found = await condition();
    if (found !== undefined && found !== null && found !== false) return found;
    if (performance.now() > endMs) throw new Error(`waited ${deadlineMs} ms in vain for ${what}`);
    await sleep(20);
  }
}

export function sleep(durationMs: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, durationMs));
}
