import type { z } from 'zod';
import type { MonitorMethod, MonitorReply, monitorMethods } from '../../shared-types/monitor-api.ts';
import type { JobFlags } from './job-flags.ts';

/** The calls that the log answers, all of them in the history worker. */
export type HistoryMethod = Extract<
  MonitorMethod,
  'days' | 'day' | 'recent' | 'events' | 'logFacts' | 'allowedHeat' | 'replay' | 'whatIf' | 'keptFit'
>;

/** Parameters of a call once they were checked. */
export type CheckedParams<M extends MonitorMethod> = z.output<(typeof monitorMethods)[M]['params']>;

/** A question on its way to the worker. */
export interface HistoryQuestion<M extends HistoryMethod = HistoryMethod> {
  readonly id: number;
  readonly method: M;
  readonly params: CheckedParams<M>;
  /** Of a question whose progress is watched and that may be given up. */
  readonly flags?: JobFlags | undefined;
}

/** What the worker answers. `remarks` is what the log says about its own state. */
export interface HistoryAnswer<M extends HistoryMethod = HistoryMethod> {
  readonly id: number;
  readonly site: string;
  readonly reply: MonitorReply<M>;
  readonly remarks: readonly string[];
}
