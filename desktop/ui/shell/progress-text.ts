import type { JobProgress, JobStage } from '../../../shared-types/jobs.ts';
import type { NumberFormats } from '../format/numbers.ts';
import { en } from '../text/en.ts';

/** Stages of which it is known how much of them is done. */
const counted: readonly JobStage[] = ['deciding', 'living', 'sweeping', 'importing', 'checking'];

/** The done share of a job; undefined while nobody can tell it. */
export const doneOf = ({ doing, doneFraction }: JobProgress): number | undefined =>
  counted.includes(doing) ? doneFraction : undefined;

/** How far a job is, in words; without a number where there is none. */
export function progressText(progress: JobProgress, { percent }: Pick<NumberFormats, 'percent'>): string {
  const done = doneOf(progress);
  const { running, busy } = en.jobs;
  return done === undefined ? busy(progress.doing) : running(progress.doing, percent(done));
}
