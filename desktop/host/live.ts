import type { Answer } from '../../shared-types/engine.ts';
import type { SiteMessage } from '../../shared-types/messages.ts';
import type { HostState, MonitorEvent, Problem, SiteLive } from '../../shared-types/monitor-api.ts';
import { createCoalescer } from './coalesce.ts';
import { countIgnored } from './ignored-messages.ts';
import { type Heard, readMessage } from './message-reader.ts';
import { createProblemBook } from './problems.ts';
import { createSiteRegistry } from './site-registry.ts';

/** What the monitor knows at this moment, and who is told when it changes. */
export interface Live {
  take(topic: string, payload: Uint8Array, retained: boolean): void;
  /** A site whose days came from another logger: no controller speaks of it. */
  takeImported(message: SiteMessage): void;
  put(cause: string, problem: Problem): void;
  settle(cause: string): void;
  /** Tells the listeners about the host again, say after the broker came or went. */
  hostChanged(): void;
  host(): HostState;
  site(name: string): SiteLive | undefined;
  sites(): SiteLive[];
  listen(listener: (event: MonitorEvent) => void): () => void;
  close(): void;
}

interface LiveOptions {
  readonly brokerUrl: string;
  readonly brokerConnected: () => boolean;
  readonly onAnswer: (site: string, answer: Answer) => void;
}

/** Least time between two events about one site [ms]: some eight a second. */
const eventIntervalMs = 125;

const hostKey = Symbol('host');

export function createLive({ brokerUrl, brokerConnected, onAnswer }: LiveOptions): Live {
  const problems = createProblemBook();
  const registry = createSiteRegistry(Date.now);
  const listeners = new Set<(event: MonitorEvent) => void>();
  const ignore = countIgnored(put);
  const events = createCoalescer<string | typeof hostKey>(eventIntervalMs, tell);

  const host = (): HostState => ({
    brokerConnected: brokerConnected(),
    brokerUrl,
    problems: problems.list(),
  });

  function tell(key: string | typeof hostKey): void {
    const event: MonitorEvent = key === hostKey ? { kind: 'host', host: host() } : newsOf(key);
    for (const listener of listeners) listener(event);
  }

  function newsOf(site: string): MonitorEvent {
    const live = registry.live(site);
    return live === undefined ? { kind: 'gone', site } : { kind: 'live', live };
  }

  function put(cause: string, problem: Problem): void {
    if (problems.put(cause, problem)) events.mark(hostKey);
  }

  function hear(topic: string, heard: Heard, retained: boolean): void {
    if (heard.kind === 'malformed') ignore(topic, heard.reason);
    else if (heard.kind === 'answer') onAnswer(heard.site, heard.message.answer);
    else if (registry.take(heard, retained)) events.mark(heard.site);
    else put('too many sites', tooManySites);
  }

  return {
    take: (topic, payload, retained) => hear(topic, readMessage(topic, payload), retained),
    takeImported(message) {
      const { name } = message.site;
      if (registry.take({ kind: 'site', site: name, message }, true)) events.mark(name);
    },
    put,
    settle(cause) {
      if (problems.settle(cause)) events.mark(hostKey);
    },
    hostChanged: () => events.mark(hostKey),
    host,
    site: registry.live,
    sites: registry.all,
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      events.close();
      listeners.clear();
    },
  };
}

const tooManySites: Problem = {
  severity: 'error',
  text: 'The broker carries more sites than this monitor keeps. Those heard first are shown.',
};
