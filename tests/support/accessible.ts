import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** So many rules at least have to have found something to look at, or the page was not there yet. */
const leastPasses = 15;

/** Colours that fade into each other are neither of them: until all that ends has ended. */
const settled = `Promise.allSettled(
  document.getAnimations().filter((one) => one.effect?.getComputedTiming().endTime !== Infinity).map((one) => one.finished),
)`;

/** Fails with what axe finds to complain of, and where; also when it found hardly anything to look at. */
export async function expectAccessible(page: Page): Promise<void> {
  await page.evaluate(settled);
  const found = await new AxeBuilder({ page }).analyze();
  expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html)}`)).toEqual([]);
  expect(found.passes.length).toBeGreaterThan(leastPasses);
}
