import type { HeavyJob, HeavyMethod } from '../../shared-types/jobs.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { CheckedParams } from './history-messages.ts';
import type { JobBoard } from './job-board.ts';
import { refusal } from './replies.ts';
import type { Tuning } from './tuning.ts';

/** Long jobs, one at a time for a site: two would only make each other slow. */
export interface HeavyJobs {
  run<M extends HeavyMethod>(method: M, params: CheckedParams<M>): Promise<MonitorReply<M>>;
  /** The one that runs for a site; null when none does. */
  of(site: string): HeavyJob | null;
}

/** What each is called where it stands in the way of another. */
const jobNames: Readonly<Record<HeavyMethod, string>> = {
  compareDay: 'a day under other settings',
  sweep: 'many settings over many days',
  fit: 'a fit of the loop',
};

export function createHeavyJobs(jobs: JobBoard, tuning: Pick<Tuning, 'ask'>): HeavyJobs {
  const running = new Map<string, { readonly method: HeavyMethod; readonly job: string }>();

  function of(site: string): HeavyJob | null {
    const one = running.get(site);
    const progress = one === undefined ? null : jobs.progress(one.job);
    return one === undefined || progress === null ? null : { ...one, progress };
  }

  return {
    of,
    async run<M extends HeavyMethod>(method: M, params: CheckedParams<M>): Promise<MonitorReply<M>> {
      const { site, job } = params;
      const other = of(site);
      if (other !== null) return busy(site, other);
      running.set(site, { method, job });
      try {
        return await jobs.run(job, (flags, { up }) => tuning.ask(method, params, flags, up));
      } finally {
        running.delete(site);
      }
    },
  };
}

function busy(site: string, { method }: HeavyJob) {
  return refusal(
    'note',
    `Nothing was begun: the monitor is busy with ${jobNames[method]} for ${site}.`,
    'Wait until it is through, or end it.',
  );
}
