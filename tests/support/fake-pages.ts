import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject } from 'vitest';
import type { Tokens } from '../../desktop/web/tokens.ts';
import { launchBrowser } from './browser.ts';
import { type FakeMonitor, startFakeMonitor } from './fake-monitor/fake-monitor.ts';

type View = Parameters<Browser['newContext']>[0];

/** Pages of a monitor of made-up data, in a browser of their own; each test begins with the data as it was. */
export interface FakePages {
  readonly monitor: FakeMonitor;
  /** Opens the page at a place such as #/days, as somebody's only window. */
  open(hash: string, view?: View): Promise<Page>;
}

/**
 * Starts monitor and browser before the tests of a file and stops them after. A test fails when its page complained:
 * of scripts that failed, or of what the page's policy refused.
 *
 * @param tokens - With these somebody has to sign in; then the browser itself complains of each door that is shut.
 */
export function fakePages(tokens?: Tokens): FakePages {
  let browser: Browser | undefined;
  let monitor: FakeMonitor | undefined;
  let context: BrowserContext | undefined;
  let complaints: string[] = [];

  const started = <Part>(part: Part | undefined): Part => {
    if (part === undefined) throw new Error('pages are there once the tests of the file have begun');
    return part;
  };

  beforeAll(async () => {
    browser = await launchBrowser();
    monitor = await startFakeMonitor(inject('pageFolder'), 0, tokens);
  });
  afterAll(async () => {
    await browser?.close();
    await monitor?.close();
  });
  beforeEach(() => {
    complaints = [];
    monitor?.reset();
  });
  afterEach(async () => {
    await context?.close();
    expect(complaints).toEqual([]);
  });

  return {
    get monitor() {
      return started(monitor);
    },
    async open(hash, view = {}) {
      const size = { width: 1280, height: 800 };
      context = await started(browser).newContext({ viewport: size, locale: 'en-GB', ...view });
      const page = await context.newPage();
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error' && tokens === undefined) complaints.push(message.text());
      });
      await page.goto(`${started(monitor).url}${hash}`);
      return page;
    },
  };
}
