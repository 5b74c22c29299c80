import { daySkyOf } from '../../sim/identify/day-sky.ts';
import { usualLoop } from '../../sim/identify/possible-loop.ts';
import { readSpan } from '../../sim/identify/world/span.ts';
import { worldOf } from '../../sim/identify/world/world.ts';
import { liveDay } from '../../sim/replay/live-again/live-day.ts';
import { rulesOf } from '../../sim/replay/rules.ts';
import { takeUp } from '../../sim/replay/taking-up.ts';
import { counterfactualCase } from '../support/counterfactual-cases.ts';
import { median, report } from './figure.ts';

const repeats = 15;
const worldRepeats = 3;

/** Time of a core that a call of `work` takes [ms], the middle of several: what else the machine does counts little. */
function coreMs(calls: number, work: () => void): number {
  const times: number[] = [];
  for (let call = 0; call < calls; call++) {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    times.push((user + system) / 1000);
  }
  return median(times);
}

/** How fast a logged day is lived again: once its world is made, and what making that world takes. */
export function benchWhatIf(): void {
  const { logged, tried } = counterfactualCase(4, 'full', 2);
  const read = readSpan(logged.reader, logged.days.at(-1) as string);
  if (!read.ok) throw new Error(read.why);
  const { span } = read;
  const { state } = takeUp(logged.reader, span.first, rulesOf(logged.reader), undefined);
  const world = worldOf(span);
  const live = () => liveDay({ span, world, state, settingsAt: () => tried, seed: 1 });
  live();
  report({
    bench: 'whatif',
    figure: 'days lived again a second on one core',
    value: 1000 / coreMs(repeats, live),
    unit: 'days/s',
    atLeast: 100,
  });
  const sky = daySkyOf(span, usualLoop);
  if (sky === undefined) throw new Error('the pan told nothing of the sky');
  report({
    bench: 'whatif',
    figure: 'sky of a day, first loop',
    value: coreMs(worldRepeats, () => daySkyOf(span, usualLoop)),
    unit: 'ms',
  });
  report({
    bench: 'whatif',
    figure: 'sky of a day, each further loop',
    value: coreMs(worldRepeats, () => sky.of(usualLoop)),
    unit: 'ms',
  });
  report({
    bench: 'whatif',
    figure: 'world of a day, first loop',
    value: coreMs(worldRepeats, () => worldOf(span)),
    unit: 'ms',
  });
  report({
    bench: 'whatif',
    figure: 'world of a day, each further loop',
    value: coreMs(worldRepeats, () => worldOf(span, usualLoop, world.panOffsetK)),
    unit: 'ms',
  });
}
