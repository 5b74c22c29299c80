import { Command } from 'commander';
import fc from 'fast-check';
import { step, stepOn } from '../../controller/engine/index.ts';
import { judge } from '../property/closed-loop/judge.ts';
import { choicesOf, chosenLife, lifeDraw } from '../property/closed-loop/lives.ts';
import { settingsDraw, siteDraw, stretchesDraw } from '../property/engine/draws.ts';
import { firstBroken } from '../property/engine/walk.ts';
import { allInvariants, invariants } from '../property/invariants/table.ts';

const command = new Command('npm run fuzz --')
  .description(
    'Attacks the promises: random sequences at the engine alone, random lives of a loop, and loops in which ' +
      'two or three things fail one after the other. What breaks a promise is printed with what repeats it.',
  )
  .argument('[minutes]', 'how long to go on', Number, 10)
  .option('--seed <number>', 'where to begin; by the clock otherwise', Number)
  .option('--pairs', 'every ordered pair of faults once, however long it takes, and nothing else')
  .addHelpText(
    'after',
    '\nExit codes: 0 every promise held, 1 one was broken.\nExample: npm run fuzz -- 30 --seed 7',
  )
  .parse();
const { seed: firstSeed = (Date.now() % 1_000_000) + 1, pairs = false } = command.opts<{
  seed?: number;
  pairs?: boolean;
}>();
const [minutes] = command.processedArgs as [number];

const counts = { sequences: 0, asked: 0, lives: 0, pairs: 0, triples: 0 };

function attack<Ts>(
  what: keyof typeof counts,
  property: fc.IPropertyWithHooks<Ts>,
  seed: number,
  numRuns: number,
) {
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

/** A loop in which the faults of that number happen one after the other. */
function attackChosen(what: 'pairs' | 'triples', number: number, seed: number): void {
  const life = chosenLife(number, what === 'pairs' ? 2 : 3, seed);
  const text = judge(life, invariants, stepOn);
  counts[what]++;
  if (text !== undefined) report(what, { text, site: life.site.name, faults: life.faults, number, seed });
}

/** Numbers of choices in an order that jumps about, so that a short run meets all sorts. */
const stride = 7919;

function attackEveryPair(seed: number): void {
  const all = choicesOf(2);
  for (let done = 0; done < all; done++) {
    attackChosen('pairs', (done * stride) % all, seed);
    if (counts.pairs % 64 === 0) tell({ ofPairs: all });
  }
}

function attackFor(untilMs: number): void {
  for (let seed = firstSeed; performance.now() < untilMs; seed++) {
    attack('sequences', walks, seed, 1000);
    attack('asked', slowWalks, seed, 20);
    attack('lives', lives, seed, 4);
    for (let i = 0; i < 4; i++) {
      attackChosen('pairs', ((4 * seed + i) * stride) % choicesOf(2), seed);
      attackChosen('triples', ((4 * seed + i) * stride) % choicesOf(3), seed);
    }
    tell({ seed });
  }
}

function tell(where: object): void {
  console.log(JSON.stringify({ ...where, ...counts, worked: process.exitCode !== 1 }));
}

if (pairs) attackEveryPair(firstSeed);
else attackFor(performance.now() + minutes * 60_000);
