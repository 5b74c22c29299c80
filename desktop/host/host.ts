import { readFileSync } from 'node:fs';
import { siteTopics } from '../../shared-types/messages.ts';
import {
  type MonitorApi,
  type MonitorMethod,
  type MonitorParams,
  type MonitorReply,
  monitorMethods,
  type Problem,
} from '../../shared-types/monitor-api.ts';
import { parseBrokerAddress, withoutCredentials } from './broker-address.ts';
import { type BrokerLink, openBrokerLink } from './broker-link.ts';
import { brokerProblem } from './broker-words.ts';
import { createHandlers } from './handlers.ts';
import { createHistory } from './history.ts';
import type { CheckedParams } from './history-messages.ts';
import { createImportDesk } from './import-desk.ts';
import { createLive, type Live } from './live.ts';
import { firstIssue, refusal, wordsOf } from './replies.ts';
import { createRequests } from './requests.ts';
import { siteNameSchema } from './site-name.ts';
import { createTuning } from './tuning.ts';

/** The monitor without its screens: what it heard of every controller, and what their logs hold. */
export interface MonitorHost extends MonitorApi {
  close(): Promise<void>;
}

export interface HostOptions {
  readonly brokerUrl: string;
  readonly username?: string | undefined;
  /** File whose first line is the password. */
  readonly passwordFile?: string | undefined;
  /** Folder of the controllers' logs; a site without a log there still shows live. */
  readonly dataFolder: string;
  /** Module of the history worker, where it is not the source beside this file. */
  readonly historyWorker?: URL;
  /** The same of the worker that takes days of another logger in. */
  readonly importWorker?: URL;
  /** The same of the thread that lives days again. */
  readonly tuningWorker?: URL;
  /** The same of the threads of a sweep. */
  readonly sweepWorker?: URL;
}

const answerTimeoutMs = 8000;
const historyTimeoutMs = 60_000;
/** How long a job that was given up may take to put things in order. */
const tuningPatienceMs = 5000;

/** Starts a monitor. It never throws: what is amiss stands among its problems, in words. */
export function createHost(options: HostOptions): MonitorHost {
  let link: BrokerLink | undefined;
  const brokerUrl = withoutCredentials(options.brokerUrl);
  const requests = createRequests({
    timeoutMs: answerTimeoutMs,
    publish: (site, message) => link?.publish(siteTopics(site).request, JSON.stringify(message)),
  });
  const live = createLive({
    brokerUrl,
    brokerConnected: () => link?.connected() ?? false,
    onAnswer: requests.hear,
  });
  const history = createHistory({
    dataFolder: options.dataFolder,
    worker: options.historyWorker ?? new URL('./history-worker.ts', import.meta.url),
    timeoutMs: historyTimeoutMs,
    onRemarks: (site, remarks) => tellRemarks(live, site, remarks),
  });
  const tuning = createTuning({
    dataFolder: options.dataFolder,
    worker: options.tuningWorker ?? new URL('./tuning-worker.ts', import.meta.url),
    sweepWorker: options.sweepWorker,
    patienceMs: tuningPatienceMs,
  });
  link = connect(options, brokerUrl, live);
  const imports = createImportDesk({
    live,
    dataFolder: options.dataFolder,
    worker: options.importWorker ?? new URL('./import-worker.ts', import.meta.url),
  });
  const handlers = createHandlers({ live, history, tuning, requests, imports });

  return {
    async call<M extends MonitorMethod>(method: M, params: MonitorParams<M>): Promise<MonitorReply<M>> {
      const checked = monitorMethods[method].params.safeParse(params);
      if (!checked.success)
        return refusal('error', `Not a question to the monitor: ${firstIssue(checked.error)}.`);
      const site = 'site' in checked.data ? checked.data.site : undefined;
      // A site's name becomes a folder and a topic: nothing else may pass for one.
      if (site !== undefined && !siteNameSchema.safeParse(site).success)
        return refusal('error', 'No site has such a name.');
      return handlers[method](checked.data as CheckedParams<M>);
    },
    listen: live.listen,
    async close() {
      requests.close();
      await Promise.all([link?.close(), history.close(), tuning.close(), imports.close()]);
      live.close();
    },
  };
}

/** Opens the line to the broker; without an address and a password that can be used, there is none. */
function connect(options: HostOptions, brokerUrl: string, live: Live): BrokerLink | undefined {
  const { username, passwordFile } = options;
  try {
    const address = parseBrokerAddress(options.brokerUrl);
    if (address === undefined) throw new TypeError(noAddress);
    const password = passwordFile === undefined ? undefined : firstLine(passwordFile);
    const link = openBrokerLink({
      ...address,
      ...(username === undefined ? {} : { username }),
      ...(password === undefined ? {} : { password }),
      onMessage: live.take,
      onError: (thrown) => live.put('broker', brokerProblem(brokerUrl, thrown)),
      onChange() {
        if (link.connected()) live.settle('broker');
        live.hostChanged();
      },
    });
    return link;
  } catch (thrown) {
    live.put('broker', unusable(wordsOf(thrown)));
    return undefined;
  }
}

const unusable = (why: string): Problem => ({
  severity: 'error',
  text: `The monitor cannot go to its broker: ${why}.`,
  tip: 'Start it again with an address such as mqtt://127.0.0.1:1883 and a password file that it may read.',
});

const noAddress =
  'what it was given is no address of a broker; in a name or password, / ? # and @ are written %2F %3F %23 and %40';

const firstLine = (path: string) => readFileSync(path, 'utf8').split(/\r?\n/, 1)[0] ?? '';

function tellRemarks(live: Live, site: string, remarks: readonly string[]): void {
  if (remarks.length === 0) live.settle(`log ${site}`);
  else live.put(`log ${site}`, { severity: 'warning', text: `Log of ${site}: ${remarks.join(' ')}` });
}
