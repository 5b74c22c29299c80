import type { HeavyJob, HeavyMethod } from '../../shared-types/jobs.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { CheckedParams } from './history-messages.ts';
import type { JobBoard } from './job-board.ts';
import { refusal } from './replies.ts';
import type { Tuning } from './tuning.ts';
import { wasGivenUp } from './was-given-up.ts';

/** Long jobs, one at a time for a site: two would only make each other slow. */
export interface HeavyJobs {
  run<M extends HeavyMethod>(method: M, params: CheckedParams<M>): Promise<MonitorReply<M>>;
  /** The one that runs for a site; null when none does, or when it was given up. */
  of(site: string): HeavyJob | null;
}

/** What each is called where it stands in the way of another. */
const jobNames: Readonly<Record<HeavyMethod, string>> = {
  compareDay: 'a day under other settings',
  sweep: 'many settings over many days',
  fit: 'a fit of the loop',
  panCheck: 'a check of the pan',
};

/** The newest of a site. */
interface Running {
  readonly method: HeavyMethod;
  readonly job: string;
  readonly givenUp: AbortSignal;
  /** Settles, and never rejects, once its thread is gone. */
  readonly ended: Promise<unknown>;
}

export function createHeavyJobs(jobs: JobBoard, tuning: Pick<Tuning, 'ask'>): HeavyJobs {
  const running = new Map<string, Running>();

  function of(site: string): HeavyJob | null {
    const one = running.get(site);
    if (one === undefined || one.givenUp.aborted) return null;
    const { method, job } = one;
    const progress = jobs.progress(job);
    return progress === null ? null : { method, job, progress };
  }

  return {
    of,
    async run<M extends HeavyMethod>(method: M, params: CheckedParams<M>): Promise<MonitorReply<M>> {
      const { site, job } = params;
      const before = running.get(site);
      if (before !== undefined && !before.givenUp.aborted) return busy(site, before);
      return jobs.run(job, async (flags, { up }) => {
        const work = beginAfter(before?.ended, up, () => tuning.ask(method, params, flags, up));
        const own = { method, job, givenUp: up, ended: work.catch(() => undefined) };
        running.set(site, own);
        try {
          return await work;
        } finally {
          if (running.get(site) === own) running.delete(site);
        }
      });
    },
  };
}

/** Begins once the job before has ended, which was given up and needs a moment for that. */
async function beginAfter<Reply>(
  before: Promise<unknown> | undefined,
  givenUp: AbortSignal,
  begin: () => Promise<Reply>,
): Promise<Reply | typeof wasGivenUp> {
  if (before !== undefined) await before;
  return givenUp.aborted ? wasGivenUp : begin();
}

function busy(site: string, { method }: Running) {
  return refusal(
    'note',
    `Nothing was begun: the monitor is busy with ${jobNames[method]} for ${site}.`,
    'Wait until it is through, or end it.',
  );
}
