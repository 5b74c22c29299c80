/**
 * Loads a part of the page, and tries again for as long as the monitor is away.
 *
 * @param pauseMs - Time between two attempts [ms].
 */
export async function loadPatiently<Part>(load: () => Promise<Part>, pauseMs = 1000): Promise<Part> {
  for (;;) {
    try {
      return await load();
    } catch {
      await new Promise((resolve) => setTimeout(resolve, pauseMs));
    }
  }
}
