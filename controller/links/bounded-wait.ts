/** Waits for work to end, well or badly, but no longer than `limitMs`. */
export async function boundedWait(work: Promise<unknown>, limitMs: number): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, limitMs);
  });
  await Promise.race([work.catch(() => undefined), limit]);
  clearTimeout(timer);
}
