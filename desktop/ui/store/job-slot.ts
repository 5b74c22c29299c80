import type { HeavyMethod, JobProgress } from '../../../shared-types/jobs.ts';
import type { MonitorParams, MonitorResult, Problem } from '../../../shared-types/monitor-api.ts';
import type { Door } from '../door.ts';

/** Questions that name a job, so that their progress can be asked for. */
type JobMethod = 'whatIf' | 'importDays' | HeavyMethod;

/** How a question that takes long stands. */
export type JobOutcome<Result> =
  | { readonly state: 'running'; readonly progress: JobProgress }
  | { readonly state: 'ready'; readonly result: Result }
  | { readonly state: 'failed'; readonly problem: Problem };

/** A place for one question at a time: a newer one takes it from the one before. */
export interface JobSlot<M extends JobMethod> {
  /** @param put - Told how it stands, until it is given up or another takes its place. */
  run(
    params: Omit<MonitorParams<M>, 'job'>,
    put: (outcome: JobOutcome<MonitorResult<M>>) => void,
  ): Promise<void>;
  /** Gives it up: nothing of it is told any more. */
  cancel(): void;
  /** Asks the monitor to end it; what came of it is still told. */
  end(): void;
}

/** Pause between two questions how far a job is [ms]. */
const progressEveryMs = 400;

export function createJobSlot<M extends JobMethod>(door: Door, method: M): JobSlot<M> {
  let job = '';

  function end(): void {
    if (job !== '') void door.call('cancelJob', { job });
  }

  function cancel(): void {
    end();
    job = '';
  }

  return {
    cancel,
    end,
    async run(params, put) {
      cancel();
      const own = newJob();
      job = own;
      const tell: typeof put = (outcome) => {
        if (job === own) put(outcome);
      };
      tell({ state: 'running', progress: { doneFraction: 0, doing: 'waiting' } });
      const watching = setInterval(async () => {
        const told = await door.call('jobProgress', { job: own });
        if (told.ok && told.result !== null) tell({ state: 'running', progress: told.result });
      }, progressEveryMs);
      const reply = await door.call(method, { ...params, job: own } as MonitorParams<M>);
      clearInterval(watching);
      tell(reply.ok ? { state: 'ready', result: reply.result } : { state: 'failed', problem: reply.problem });
      if (job === own) job = '';
    },
  };
}

/** A name that nobody guesses. The browser's own maker of such names works on secure pages alone. */
export function newJob(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
