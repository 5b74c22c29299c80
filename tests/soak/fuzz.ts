import fc from 'fast-check';
import { step, stepOn } from '../../controller/engine/index.ts';
import { judge } from '../property/closed-loop/judge.ts';
import { faultKindsOf, lifeDraw, lifeWith, sites } from '../property/closed-loop/lives.ts';
import { settingsDraw, siteDraw, stretchesDraw } from '../property/engine/draws.ts';
import { firstBroken } from '../property/engine/walk.ts';
import { allInvariants, invariants } from '../property/invariants/table.ts';

/**
 * Attacks the promises for a number of minutes: random sequences at the engine alone, random lives of a loop, and
 * one ordered pair of faults after the other. `npm run fuzz -- 30` goes on for 30 minutes; `npm run fuzz -- 30 7`
 * begins with the seed 7. What breaks a promise is printed with the seed and the path that repeat it.
 */
const untilMs = performance.now() + Number(process.argv[2] ?? 10) * 60_000;
let seed = Number(process.argv[3] ?? (Date.now() % 1_000_000) + 1);
const counts = { sequences: 0, asked: 0, lives: 0, pairs: 0 };

function attack<Ts>(what: keyof typeof counts, property: fc.IPropertyWithHooks<Ts>, numRuns: number): void {
  const found = fc.check(property, { seed, numRuns });
  counts[what] += found.numRuns;
  if (!found.failed) return;
  const { counterexamplePath: path, counterexample, errorInstance } = found;
  report(what, { text: String(errorInstance), seed, path, counterexample });
}

function report(what: string, found: object): void {
  console.log(JSON.stringify({ broken: what, ...found }));
  process.exitCode = 1;
}

/** Throws what is broken, so that it is shown beside the counterexample. */
function hold(broken: string | undefined): void {
  if (broken !== undefined) throw new Error(broken);
}

const walks = fc.property(stretchesDraw, siteDraw, settingsDraw, (stretches, site, settings) =>
  hold(firstBroken(invariants, stretches, { site, settings, step: stepOn })),
);
const slowWalks = fc.property(stretchesDraw, siteDraw, settingsDraw, (stretches, site, settings) =>
  hold(firstBroken(allInvariants, stretches, { site, settings, step })),
);
const lives = fc.property(lifeDraw, (life) => hold(judge(life, invariants, stepOn)));

const pairs = sites.flatMap((site, number) =>
  faultKindsOf(site).flatMap((first) =>
    faultKindsOf(site).map((second) => ({ number, site, first, second })),
  ),
);

/** The next pairs of faults; the order jumps about, so that a short run meets all sorts. */
function attackPairs(count: number): void {
  for (let i = 0; i < count; i++) {
    const at = ((counts.pairs + seed) * 7919) % pairs.length;
    const { number, site, first, second } = pairs[at] as (typeof pairs)[number];
    const broken = judge(lifeWith(site, first, second, seed + counts.pairs), invariants, stepOn);
    counts.pairs++;
    if (broken !== undefined)
      report('pairs', {
        text: broken,
        site: site.name,
        number,
        first,
        second,
        seed: seed + counts.pairs - 1,
      });
  }
}

while (performance.now() < untilMs) {
  attack('sequences', walks, 1000);
  attack('asked', slowWalks, 20);
  attack('lives', lives, 4);
  attackPairs(8);
  console.log(JSON.stringify({ seed, ...counts, ofPairs: pairs.length, worked: process.exitCode !== 1 }));
  seed++;
}
