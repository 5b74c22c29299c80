import type { Invariant, Step, Verdict } from '../invariants/invariant.ts';
import { Watch } from '../invariants/watch.ts';
import { type Life, live } from './life.ts';
import { truths } from './truths.ts';

/** What a loop's life breaks first, of what the plant and of what the engine is asked; undefined: nothing. */
export function judge(life: Life, invariants: readonly Invariant[], step: Step, asked = truths): Verdict {
  const { site, settings } = life;
  const watch = new Watch(invariants, { site, settings, step });
  const watchers = asked.map((truth) => ({ name: truth.name, look: truth.watch(site, settings) }));
  for (const moment of live(life, step)) {
    const broken = watch.look(moment);
    if (broken !== undefined) return `${moment.atS} s, ${broken}`;
    for (const { name, look } of watchers) {
      const verdict = look(moment);
      if (verdict !== undefined) return `${moment.atS} s, ${name}: ${verdict}`;
    }
  }
  return undefined;
}
