import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Step } from '../invariants/invariant.ts';
import { mutants } from '../invariants/mutants.ts';
import { allInvariants } from '../invariants/table.ts';
import { settingsDraw, siteDraw, stretchesDraw } from './draws.ts';
import { firstBroken } from './walk.ts';

/** Sequences within which a broken engine has to be found out; the same ones in every run. */
const numRuns = 3000;
const seed = 2031;

/** True when the invariant of that name is broken by the engine. */
function notices(name: string, make: () => Step): boolean {
  const those = allInvariants.filter((invariant) => invariant.name === name);
  const { failed } = fc.check(
    fc.property(
      stretchesDraw,
      siteDraw,
      settingsDraw,
      (stretches, site, settings) =>
        firstBroken(those, stretches, { site, settings, step: make() }) === undefined,
    ),
    { numRuns, seed, endOnFailure: true },
  );
  return failed;
}

describe('an engine with one thing wrong', () => {
  const rows = mutants.flatMap(({ wrong, breaks, make }) => breaks.map((name) => ({ wrong, name, make })));

  it.each(rows)('that $wrong breaks $name', ({ name, make }) => {
    expect(notices(name, make)).toBe(true);
  });

  it('stands against every invariant', () => {
    const broken = new Set(mutants.flatMap(({ breaks }) => breaks));
    expect(allInvariants.map(({ name }) => name).filter((name) => !broken.has(name))).toEqual([]);
  });
});
