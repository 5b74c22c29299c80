import { serveMonitor, type WebServer } from '../../../desktop/web/server.ts';
import type { Tokens } from '../../../desktop/web/tokens.ts';
import type { Answer } from '../../../shared-types/engine.ts';
import type { HeavyJob } from '../../../shared-types/jobs.ts';
import type { DayCurves, DaySummary } from '../../../shared-types/log.ts';
import { eventKinds, type LogEvent } from '../../../shared-types/log.ts';
import type { RequestedOperation } from '../../../shared-types/messages.ts';
import type {
  HostState,
  MonitorApi,
  MonitorEvent,
  MonitorMethod,
  MonitorParams,
  MonitorReply,
  Problem,
  SiteLive,
} from '../../../shared-types/monitor-api.ts';
import type { LoopFit } from '../../../shared-types/tuning.ts';
import { testEvents, testLogFacts } from './alarm-history.ts';
import { testAllowedHeat } from './allowed-heat.ts';
import { testDayCurves, testDays, testRecent, testReplay } from './history.ts';
import { createFakeJobs, type FakeJobs } from './jobs.ts';
import { testLive } from './snapshot.ts';
import { testFit } from './tuning.ts';
import { testWhatIf } from './what-if.ts';

/** A monitor of fixed, made-up data behind the real web server: the screens without a controller. */
export interface FakeMonitor {
  readonly url: string;
  /** Requests in the order in which they came. */
  readonly asked: readonly RequestedOperation[];
  /** Shows a site in another state, to pages that are open and to those that open later. */
  show(live: SiteLive): void;
  showHost(host: Partial<HostState>): void;
  /** Takes a site away. */
  take(name: string): void;
  /** The answer to the coming requests. */
  answerWith(answer: Pick<Answer, 'accepted' | 'code' | 'text'>): void;
  /** Whether the coming replays meet the same decisions. */
  replaySame(same: boolean): void;
  /** From now on nothing comes of a long question but progress, until somebody ends it. */
  holdJobs: FakeJobs['hold'];
  /** The fit that is kept from now on; null: none. */
  keptFitIs(fit: LoopFit | null): void;
  /** The long job that runs from now on; null: none. */
  heavyJobIs(job: HeavyJob | null): void;
  /** What the log says from now on that happened, the newest first. */
  eventsAre(events: readonly LogEvent[]): void;
  /** The days that the log holds from now on. */
  showDays(days: readonly DaySummary[]): void;
  /** The log answers no question from now on, for this reason. */
  logFails(problem: Problem): void;
  /** What every day and the last hours hold from now on. */
  curvesAre(curves: DayCurves): void;
  /** Forgets what the tests before changed. */
  reset(): void;
  close(): Promise<void>;
}

const calmHost: HostState = { brokerConnected: true, brokerUrl: 'mqtt://127.0.0.1:1883', problems: [] };
const agrees = { accepted: true, code: 'accepted', text: 'Accepted: the test controller does so.' } as const;

/** What the log alone can answer. */
const ofLog: ReadonlySet<MonitorMethod> = new Set([
  'days',
  'day',
  'recent',
  'events',
  'logFacts',
  'allowedHeat',
  'replay',
  'whatIf',
]);

/** @param tokens - With these the monitor wants to know who is there. */
export async function startFakeMonitor(pageFolder: string, port = 0, tokens?: Tokens): Promise<FakeMonitor> {
  const listeners = new Set<(event: MonitorEvent) => void>();
  const asked: RequestedOperation[] = [];
  let lives = new Map<string, SiteLive>();
  let host = calmHost;
  let answer: Pick<Answer, 'accepted' | 'code' | 'text'> = agrees;
  let same = true;
  let days = testDays;
  let events = testEvents;
  let logProblem: Problem | undefined;
  let curves: DayCurves | undefined;
  let keptFit: LoopFit | null = null;
  let heavyJob: HeavyJob | null = null;
  const jobs = createFakeJobs();

  function replyTo(method: MonitorMethod, params: never): unknown {
    const {
      day = '',
      hours = 6,
      limit = 1000,
      kinds = eventKinds,
      job = '',
      operation,
    } = params as {
      day?: string;
      hours?: number;
      limit?: number;
      kinds?: readonly LogEvent['kind'][];
      job?: string;
      operation: RequestedOperation;
    };
    switch (method) {
      case 'hostState':
        return host;
      case 'sites':
        return [...lives.values()];
      case 'days':
        return days;
      case 'day':
        return curves === undefined ? testDayCurves(day) : { ...curves, day };
      case 'recent':
        return curves ?? testRecent(hours);
      case 'events':
        return events.filter(({ kind }) => kinds.includes(kind)).slice(0, limit);
      case 'logFacts':
        return testLogFacts;
      case 'allowedHeat':
        return testAllowedHeat;
      case 'replay':
        return testReplay(day, same);
      case 'whatIf':
        return testWhatIf(day);
      case 'keptFit':
        return keptFit;
      case 'heavyJob':
        return heavyJob;
      case 'jobProgress':
        return jobs.progress(job);
      case 'cancelJob':
        heavyJob = null;
        return jobs.cancel(job);
      case 'settingsRemarks':
        return [{ text: 'With these settings the pump may cycle.', isNew: true }];
      case 'request':
        asked.push(operation);
        return { id: 'request-1', ...answer };
      default:
        return undefined;
    }
  }

  const tell = (event: MonitorEvent) => {
    for (const listener of listeners) listener(event);
  };
  const api: MonitorApi = {
    async call<M extends MonitorMethod>(method: M, params: MonitorParams<M>) {
      if (logProblem !== undefined && ofLog.has(method)) return { ok: false, problem: logProblem };
      const long = jobs.answer(method, params as never);
      if (method === 'fit') keptFit = testFit((params as MonitorParams<'fit'>).days);
      return (await (long ?? { ok: true, result: replyTo(method, params as never) })) as MonitorReply<M>;
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };

  const show = (live: SiteLive) => {
    lives.set(live.name, live);
    tell({ kind: 'live', live });
  };
  const showHost = (change: Partial<HostState>) => {
    host = { ...calmHost, ...change };
    tell({ kind: 'host', host });
  };
  const server = await serve(api, pageFolder, port, tokens);
  show(testLive());
  return {
    url: server.url,
    asked,
    show,
    showHost,
    take(name) {
      lives.delete(name);
      tell({ kind: 'gone', site: name });
    },
    answerWith: (next) => {
      answer = next;
    },
    replaySame: (next) => {
      same = next;
    },
    holdJobs: jobs.hold,
    keptFitIs: (next) => {
      keptFit = next;
    },
    heavyJobIs: (next) => {
      heavyJob = next;
    },
    eventsAre: (next) => {
      events = next;
    },
    showDays: (next) => {
      days = next;
    },
    logFails: (problem) => {
      logProblem = problem;
    },
    curvesAre: (next) => {
      curves = next;
    },
    reset() {
      logProblem = undefined;
      curves = undefined;
      events = testEvents;
      keptFit = null;
      heavyJob = null;
      jobs.reset();
      asked.length = 0;
      answer = agrees;
      same = true;
      days = testDays;
      lives = new Map();
      showHost({});
      show(testLive());
    },
    close: () => server.close(),
  };
}

async function serve(
  api: MonitorApi,
  pageFolder: string,
  port: number,
  tokens: Tokens | undefined,
): Promise<WebServer> {
  const started = await serveMonitor({ api, pageFolder, host: '127.0.0.1', port, tokens });
  if (!started.ok) throw new Error(started.reason);
  return started.server;
}
