/** What of the browser's page is used; a test hands in its own. */
export interface LoadingPage {
  /** Resolves once the monitor serves the page again. */
  served(): Promise<void>;
  reload(): void;
}

/**
 * Loads a part of the page. When the monitor is away just then, the page is loaded anew once it is back:
 * some browsers remember that a module failed and do not ask for it again.
 */
export async function loadPatiently<Part>(load: () => Promise<Part>, page: LoadingPage): Promise<Part> {
  try {
    return await load();
  } catch {
    await page.served();
    page.reload();
    return new Promise(() => undefined);
  }
}
