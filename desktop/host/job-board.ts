import type { JobProgress } from '../../shared-types/jobs.ts';
import { cancel, doneFraction, type JobFlags, newJobFlags, stageOf } from './job-flags.ts';
import { type Refusal, refusal } from './replies.ts';

/** Jobs that run, by the names that their askers gave them. */
export interface JobBoard {
  /** Keeps a job as long as `work` takes; refused when one of that name runs already. */
  run<Result>(
    job: string,
    work: (flags: JobFlags, given: { readonly up: AbortSignal }) => Promise<Result>,
  ): Promise<Result | Refusal>;
  /** How far it is; null when no such job runs. */
  progress(job: string): JobProgress | null;
  /** @returns false when no such job runs. */
  cancel(job: string): boolean;
}

interface Running {
  readonly flags: JobFlags;
  readonly givenUp: AbortController;
}

export function createJobBoard(): JobBoard {
  const running = new Map<string, Running>();
  return {
    async run(job, work) {
      if (running.has(job)) return refusal('error', 'A job of this name runs already.');
      const flags = newJobFlags();
      const givenUp = new AbortController();
      running.set(job, { flags, givenUp });
      return work(flags, { up: givenUp.signal }).finally(() => running.delete(job));
    },
    progress(job) {
      const flags = running.get(job)?.flags;
      return flags === undefined ? null : { doneFraction: doneFraction(flags), doing: stageOf(flags) };
    },
    cancel(job) {
      const one = running.get(job);
      if (one !== undefined) {
        cancel(one.flags);
        one.givenUp.abort();
      }
      return one !== undefined;
    },
  };
}
