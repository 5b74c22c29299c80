import { setImmediate } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { covers, type TwinParameter, twinOf } from '../support/twin.ts';

/**
 * Logs made by loops with known parameters, fitted: how often does the 95 % interval hold the truth?
 *
 * `twin --cases 200 --seed 1 --days 1`. Ends with 0 when the intervals of each parameter and of all together hold it in 90
 * to 99 % of the cases, with 1 otherwise. Ctrl-C ends it after the case at hand with what there is by then.
 */
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    days: { type: 'string', default: '1' },
  },
});
const cases = Number(values.cases);
const first = Number(values.seed);

const found = new Map<string, TwinParameter[]>();
const without: string[] = [];
let ended = false;
process.once('SIGINT', () => {
  ended = true;
});
let seed = first;
for (; seed < first + cases && !ended; seed++) {
  const { fit, parameters, sensors } = twinOf({ seed, days: Number(values.days) });
  if (!fit.converged) without.push(`${seed}: ${fit.verdicts[0]}`);
  for (const parameter of [...parameters, ...sensors])
    found.set(parameter.name, [...(found.get(parameter.name) ?? []), parameter]);
  const shown = [...parameters, ...sensors].map(({ name, z }) => `${name} ${z.toFixed(2)}`).join(', ');
  console.error(`twin: ${seed} ${fit.converged ? shown : 'no fit'}`);
  await setImmediate();
}

const rowOf = (name: string, list: readonly TwinParameter[]) => {
  const share = list.filter(covers).length / list.length;
  const mean = list.reduce((sum, { z }) => sum + z, 0) / list.length;
  const spread = Math.sqrt(list.reduce((sum, { z }) => sum + z * z, 0) / list.length);
  const text = `${name.padEnd(20)}${String(list.length).padStart(6)}${(100 * share).toFixed(1).padStart(8)} %`;
  console.log(`${text}   mean ${mean.toFixed(2)}, root mean square ${spread.toFixed(2)} standard errors`);
  return share >= 0.9 && share <= 0.99;
};
console.log(
  `${seed - first} cases of ${values.days} days from seed ${first}; fitted in, and truth within the 95 % interval:`,
);
const each = [...found].map(([name, list]) => rowOf(name, list));
const together = rowOf('all together', [...found.values()].flat());
console.log(`${without.length} cases without a fit${without.length > 0 ? ':' : '.'}`);
for (const line of without) console.log(`  ${line}`);
process.exitCode = together && each.every(Boolean) ? 0 : 1;
