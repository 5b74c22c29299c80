import { cancel, doneFraction, type JobFlags, newJobFlags } from './job-flags.ts';

/** Jobs that run, by the names that their askers gave them. */
export interface JobBoard {
  /** Keeps a job as long as `work` takes. @returns undefined when one of that name runs already. */
  run<Result>(job: string, work: (flags: JobFlags) => Promise<Result>): Promise<Result> | undefined;
  /** Done share, 0 to 1; null when no such job runs. */
  progress(job: string): number | null;
  /** @returns false when no such job runs. */
  cancel(job: string): boolean;
}

export function createJobBoard(): JobBoard {
  const running = new Map<string, JobFlags>();
  return {
    run(job, work) {
      if (running.has(job)) return undefined;
      const flags = newJobFlags();
      running.set(job, flags);
      return work(flags).finally(() => running.delete(job));
    },
    progress(job) {
      const flags = running.get(job);
      return flags === undefined ? null : doneFraction(flags);
    },
    cancel(job) {
      const flags = running.get(job);
      if (flags !== undefined) cancel(flags);
      return flags !== undefined;
    },
  };
}
