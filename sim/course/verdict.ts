import type { SettingsPatch } from '../../shared-types/settings.ts';
import { type Best, bestOf } from './best/best.ts';
import { enginePolicy } from './engine-policy.ts';
import { type Result, runPolicy } from './run-policy.ts';
import type { Run } from './runs.ts';
import { plainThermostat, thermostat } from './thermostat.ts';

/** Who runs the loops of the course. */
export const runners = ['engine', 'thermostat', 'emptyingThermostat'] as const;
export type Runner = (typeof runners)[number];

/** What each runner made of a run, beside the best that it allows. */
export interface Verdict {
  readonly run: string;
  readonly results: Readonly<Record<Runner, Result>>;
  readonly best: Pick<Best, 'boundJ' | 'achievedJ'>;
}

/** Lets everybody run a run. @param patch - Settings of the engine in place of the site's. */
export function resultsOf(run: Run, patch?: SettingsPatch): Verdict['results'] {
  return {
    engine: runPolicy(run, enginePolicy(run, patch)),
    thermostat: runPolicy(run, thermostat(run.site, plainThermostat)),
    emptyingThermostat: runPolicy(run, thermostat(run.site, { ...plainThermostat, empties: true })),
  };
}

/** The same beside the best that the run allows; takes some seconds. */
export function verdictOf(run: Run, patch?: SettingsPatch): Verdict {
  return { run: run.name, results: resultsOf(run, patch), best: bestOf(run) };
}

/** Harvest over the most that anybody could have; below 0 where heat was lost. */
export function shareOfBest({ results, best }: Verdict, runner: Runner): number {
  return results[runner].harvestJ / best.boundJ;
}

/** True when the engine brought more than either thermostat. */
export function engineWins({ results }: Verdict): boolean {
  const { engine, thermostat, emptyingThermostat } = results;
  return engine.harvestJ > Math.max(thermostat.harvestJ, emptyingThermostat.harvestJ);
}
