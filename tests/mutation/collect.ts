/**
 * Stands in for the test runner while mutants run: collects tests instead of running them. A test file that asks
 * for more than this cannot be loaded, which is told.
 */
export { expect } from 'vitest';

type Body = (...values: never[]) => unknown;

export interface CollectedTest {
  readonly name: string;
  readonly body: () => unknown;
}

let collected: CollectedTest[] = [];
let groups: string[] = [];

/** The tests of the files loaded since the last call. */
export function takeTests(): readonly CollectedTest[] {
  const taken = collected;
  collected = [];
  return taken;
}

export const describe = withEach((title, body) => {
  const outer = groups;
  groups = [...outer, title];
  body();
  groups = outer;
});

export const it = withEach((title, body) => {
  collected.push({ name: [...groups, title].join(' > '), body });
});

function withEach(add: (title: string, body: () => unknown) => void) {
  const each =
    (rows: readonly unknown[]) =>
    (title: string, body: Body): void => {
      for (const [index, row] of rows.entries()) {
        const values = (Array.isArray(row) ? row : [row]) as never[];
        add(`${title} (row ${index})`, () => body(...values));
      }
    };
  return Object.assign((title: string, body: Body) => add(title, () => body()), { each });
}
