import type { JobProgress } from '../../../shared-types/jobs.ts';
import type { MonitorMethod, MonitorReply } from '../../../shared-types/monitor-api.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import { testPanCheck } from './pan-check.ts';
import { testComparison, testFit, testSweep } from './tuning.ts';

/** The long questions of the fake monitor: answered at once, or held until somebody ends them. */
export interface FakeJobs {
  /** The answer to a long question; undefined for any other. */
  answer(method: MonitorMethod, params: Asked): Promise<MonitorReply<MonitorMethod>> | undefined;
  progress(job: string): JobProgress | null;
  cancel(job: string): boolean;
  /** From now on nothing comes of a long question but this progress. */
  hold(progress: JobProgress): void;
  reset(): void;
}

interface Asked {
  readonly job: string;
  readonly day: string;
  readonly days: readonly string[];
  readonly referenceDays: readonly string[];
  readonly settings: Settings;
  readonly best: boolean;
}

const givenUp = { ok: false, problem: { severity: 'note', text: 'It was given up.' } } as const;

export function createFakeJobs(): FakeJobs {
  const held = new Map<string, () => void>();
  let holding: JobProgress | undefined;

  const result = (method: MonitorMethod, { day, days, referenceDays, settings, best }: Asked) => {
    if (method === 'compareDay') return testComparison(day, settings, best);
    if (method === 'sweep') return testSweep(days);
    if (method === 'panCheck') return testPanCheck(days, referenceDays);
    return method === 'fit' ? testFit(days) : undefined;
  };
  return {
    answer(method, asked) {
      const found = result(method, asked);
      if (found === undefined) return undefined;
      if (holding === undefined) return Promise.resolve({ ok: true, result: found });
      const { promise, resolve } = Promise.withResolvers<MonitorReply<MonitorMethod>>();
      held.set(asked.job, () => resolve(givenUp));
      return promise;
    },
    progress: (job) => (held.has(job) ? (holding ?? null) : null),
    cancel(job) {
      held.get(job)?.();
      return held.delete(job);
    },
    hold: (progress) => {
      holding = progress;
    },
    reset() {
      holding = undefined;
      for (const end of held.values()) end();
      held.clear();
    },
  };
}
