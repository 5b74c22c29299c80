import type { HeavyMethod } from '../../shared-types/jobs.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { CheckedParams } from './history-messages.ts';
import type { JobFlags } from './job-flags.ts';

/** What a worker of its own is started for. */
export interface TuningQuestion<M extends HeavyMethod = HeavyMethod> {
  readonly dataFolder: string;
  readonly method: M;
  readonly params: CheckedParams<M>;
  readonly flags: JobFlags;
  /** Address of the module of a sweep's threads, where it is bundled. */
  readonly sweepWorker?: string | undefined;
}

/** The one message that it sends. */
export type TuningAnswer<M extends HeavyMethod = HeavyMethod> = MonitorReply<M>;
