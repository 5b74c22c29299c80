import { cruise } from 'dependency-cruiser';
import extractTypescriptConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { forbidden, options } from './boundary-rules.ts';

/**
 * Checks who imports whom. Fails as well when hardly a module was looked at: a checker that finds no
 * source would otherwise pass.
 */
const rooms = ['shared-types', 'controller', 'sim', 'desktop', 'tests'];
const leastModules = 60;

const { output } = await cruise(rooms, { ...options, ruleSet: { forbidden }, validate: true }, undefined, {
  tsConfig: extractTypescriptConfig(options.tsConfig.fileName),
});
if (typeof output === 'string') throw new TypeError('the checker gave text instead of a result');

const { violations, totalCruised } = output.summary;
for (const { from, to, rule } of violations) {
  const reason = forbidden.find(({ name }) => name === rule.name)?.comment ?? '';
  console.error(`${from} -> ${to}\n  ${rule.name}: ${reason}`);
}
if (totalCruised < leastModules) console.error(`only ${totalCruised} modules were found`);
console.log(`${totalCruised} modules, ${violations.length} imports that are not allowed`);
process.exitCode = violations.length > 0 || totalCruised < leastModules ? 1 : 0;
