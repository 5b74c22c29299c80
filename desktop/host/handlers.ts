import type { MonitorMethod, MonitorReply } from '../../shared-types/monitor-api.ts';
import { createHeavyJobs } from './heavy-jobs.ts';
import type { History } from './history.ts';
import type { CheckedParams } from './history-messages.ts';
import type { ImportDesk } from './import-desk.ts';
import { createJobBoard } from './job-board.ts';
import type { Live } from './live.ts';
import { refusal } from './replies.ts';
import type { Requests } from './requests.ts';
import { settingsRemarksFor } from './settings-remarks.ts';
import type { Tuning } from './tuning.ts';

/** What answers each call, once its parameters were checked. */
export type Handlers = {
  readonly [M in MonitorMethod]: (params: CheckedParams<M>) => Promise<MonitorReply<M>>;
};

interface Parts {
  readonly live: Live;
  readonly history: History;
  readonly tuning: Tuning;
  readonly requests: Requests;
  readonly imports: ImportDesk;
}

export function createHandlers({ live, history, tuning, requests, imports }: Parts): Handlers {
  const jobs = createJobBoard();
  const heavy = createHeavyJobs(jobs, tuning);
  return {
    hostState: async () => ({ ok: true, result: live.host() }),
    sites: async () => {
      await imports.known();
      return { ok: true, result: live.sites() };
    },
    days: (params) => history.ask('days', params),
    day: (params) => history.ask('day', params),
    recent: (params) => history.ask('recent', params),
    events: (params) => history.ask('events', params),
    logFacts: (params) => history.ask('logFacts', params),
    allowedHeat: (params) => history.ask('allowedHeat', params),
    replay: (params) => history.ask('replay', params),
    whatIf: (params) => jobs.run(params.job, (flags) => history.ask('whatIf', params, flags)),
    compareDay: (params) => heavy.run('compareDay', params),
    sweep: (params) => heavy.run('sweep', params),
    fit: (params) => heavy.run('fit', params),
    panCheck: (params) => heavy.run('panCheck', params),
    keptFit: (params) => history.ask('keptFit', params),
    heavyJob: async ({ site }) => ({ ok: true, result: heavy.of(site) }),
    jobProgress: async ({ job }) => ({ ok: true, result: jobs.progress(job) }),
    cancelJob: async ({ job }) => ({ ok: true, result: jobs.cancel(job) }),
    ...imports.handlersOn(jobs),
    settingsRemarks: async ({ site, settings }) => settingsRemarksFor(live, site, settings),
    request: async ({ site, operation }) => deaf(live, site) ?? requests.ask(site, operation),
  };
}

/** Why a request would reach nobody, or undefined when somebody listens. */
function deaf(live: Live, name: string): MonitorReply<'request'> | undefined {
  const { brokerConnected, brokerUrl } = live.host();
  if (!brokerConnected)
    return refusal('error', `Nothing was asked: the monitor has no connection to the broker ${brokerUrl}.`);
  const site = live.site(name);
  if (site === undefined) return refusal('error', `Nothing was asked: no controller of ${name} was heard.`);
  if (site.status !== null && site.status.state !== 'online')
    return refusal('error', `Nothing was asked: the controller of ${name} is not running.`);
  return undefined;
}
