import { Command } from 'commander';
import { readSite, type SurveyFlags } from './read-site.ts';
import { surveyText } from './report-text.ts';
import { surveyOf } from './survey.ts';

/** Exit codes: 0 it can be built, 1 it cannot, 2 wrong options or files. */
const exitCodes = { fine: 0, impossible: 1, wrong: 2 } as const;

const program = new Command('survey')
  .description('Tells what the loop of a site file will be before it is built, and refuses what cannot be.')
  .option('--site <file>', 'site file')
  .option('--scenario <file>', 'scenario: its site and what it says of the loop beyond the site file')
  .option('--json', 'print the survey as JSON')
  .addHelpText(
    'after',
    '\nEnds with 0 when the loop can be built, 1 when it cannot, 2 for wrong options or files.' +
      '\n\nExamples:\n  survey --site sim/scenarios/quillhaven-wash-house.yaml' +
      '\n  survey --site my-site.yaml --json',
  )
  .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : exitCodes.wrong))
  .parse();

process.exitCode = run(program.opts<SurveyFlags & { readonly json?: boolean }>());

function run({ json, ...flags }: SurveyFlags & { readonly json?: boolean }): number {
  const read = readSite(flags);
  if (!read.ok) {
    for (const fault of read.faults) console.error(`survey: ${fault}`);
    return exitCodes.wrong;
  }
  const survey = surveyOf(read.site, read.setup);
  console.log(json ? JSON.stringify(survey) : surveyText(survey));
  return survey.refusals.length > 0 ? exitCodes.impossible : exitCodes.fine;
}
