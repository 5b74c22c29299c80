import type { Ground, Invariant, Seen, Verdict } from './invariant.ts';

/** Shows one sequence to many invariants, until one of them is broken. */
export class Watch {
  private readonly watchers: readonly { readonly name: string; readonly look: (seen: Seen) => Verdict }[];

  constructor(invariants: readonly Invariant[], ground: Ground) {
    this.watchers = invariants.map(({ name, watch }) => ({ name, look: watch(ground) }));
  }

  /** What this step broke, with the name of the invariant; undefined: nothing. */
  look(seen: Seen): Verdict {
    for (const { name, look } of this.watchers) {
      const broken = look(seen);
      if (broken !== undefined) return `${name}: ${broken}`;
    }
    return undefined;
  }
}
