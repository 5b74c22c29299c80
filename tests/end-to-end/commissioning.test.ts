import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { en } from '../../desktop/ui/text/en.ts';
import { launchBrowser } from '../support/browser.ts';
import { type Program, startNode } from '../support/process.ts';
import { demoContent, writeSite } from '../support/sites.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { until } from '../support/wait.ts';

const text = en.commissioning;

/** The real controller, simulated device and monitor: the run is started, watched and broken off. */
describe('a commissioning run in a real browser', () => {
  const data = temporaryFolder('commissioning');
  const programs: Program[] = [];
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    const site = writeSite(data.file('site.yaml'), demoContent({ control: { stepS: 5 } }));
    const start = (...[file, args]: Parameters<typeof startNode>): Program => {
      const program = startNode(file, args);
      programs.unshift(program);
      return program;
    };
    const clock = `${Date.parse('2031-06-21T03:00:00Z')}@${Date.now()}*60`;
    const controller = start('controller/main.mjs', ['--site', site, '--data', data.path, '--clock', clock]);
    const broker = (await controller.line(/^controller ready: broker (\S+)/))[1] ?? '';
    await start('sim/device/main.ts', ['--site', site, '--broker', broker, '--clock', clock]).line(
      /^device ready/,
    );
    const monitor = start('desktop/web/main.ts', ['--broker', broker, '--data', data.path, '--port', '0']);
    const url = (await monitor.line(/^monitor: (\S+)/))[1] ?? '';
    browser = await launchBrowser();
    const context = await browser.newContext({ locale: 'en-GB', viewport: { width: 360, height: 780 } });
    page = await context.newPage();
    await page.goto(`${url}#/site`);
  });

  afterAll(async () => {
    await browser?.close();
    for (const program of programs) await program.stop();
    data.remove();
  });

  const focused = () => page.evaluate<string>('document.activeElement.textContent');
  const tabTo = async (name: string) => {
    for (let presses = 0; presses < 60; presses++) {
      if ((await focused()) === name) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`the keyboard does not reach ${name}`);
  };
  const confirmIn = async (button: string) => {
    await until('the focus on the way out', async () => (await focused()) === en.requests.cancel);
    await page.keyboard.press('Tab');
    expect(await focused()).toBe(en.requests.confirm(button));
    await page.keyboard.press('Enter');
  };

  it('shows every sensor as it came in, and when the outputs were last renewed', async () => {
    const row = page.locator('[data-sensor=storeBottomC]');
    await row.getByText(/°C/).first().waitFor();
    await until('a reading as it came in', async () =>
      /As it came in[\d.]+.°C/.test((await row.textContent()) ?? ''),
    );
    await page.getByText(/^Last renewed \d+.s ago/).waitFor();
    await page.locator('[data-output=pump]').getByText('✓').waitFor();
  });

  it('waits for what a person has to make sure of', async () => {
    const button = page.getByRole('button', { name: text.start.button });
    expect(await button.isDisabled()).toBe(true);
    const boxes = await page.getByRole('checkbox').all();
    expect(boxes).toHaveLength(3);
    for (const box of boxes) {
      expect(await button.isDisabled()).toBe(true);
      await box.focus();
      await page.keyboard.press('Space');
    }
    expect(await button.isDisabled()).toBe(false);
  });

  it('is started and broken off by keyboard alone, and the log tells of it', async () => {
    await tabTo(text.start.button);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').getByText(text.start.consequence).waitFor();
    await confirmIn(text.start.button);
    await page.getByText(/^Start the run: Accepted/).waitFor();
    await page.getByText(/^Under way/).waitFor();
    const steps = page.getByRole('list', { name: text.stepList });
    await until('the fill to be measured', async () =>
      ((await steps.locator('[aria-current=step]').textContent()) ?? '').includes(text.steps.filling),
    );
    await tabTo(text.stop.button);
    await page.keyboard.press('Enter');
    await confirmIn(text.stop.button);
    await page.getByText(/^Break the run off: Accepted/).waitFor();
    await page.getByText(/^The run was broken off/).waitFor();
    await page.getByText(/: Commissioning run broken off$/).waitFor();
  });
});
