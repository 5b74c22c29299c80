import type {
  MonitorMethod,
  MonitorParams,
  MonitorReply,
  MonitorResult,
} from '../../../shared-types/monitor-api.ts';
import { alarmEventKinds } from '../alarms/episodes.ts';
import type { Door } from '../door.ts';
import { dayKey, type HistoryState, useHistory } from './history-store.ts';
import { type Loaded, loadedOf, loading } from './loaded.ts';

/** Questions to the log; each answer lands in the history store. */
export interface HistoryFeed {
  loadDays(site: string): Promise<void>;
  loadDay(site: string, day: string): Promise<void>;
  loadRecent(site: string, hours: number): Promise<void>;
  /** A day with every step, for a file: far too much to keep. */
  wholeDay(site: string, day: string): Promise<MonitorReply<'day'>>;
  replay(site: string, day: string): Promise<void>;
  loadAlarmEvents(site: string): Promise<void>;
  loadCommissioningEvents(site: string): Promise<void>;
  loadLogFacts(site: string): Promise<void>;
  loadAllowedHeat(site: string): Promise<void>;
}

/** Days whose curves are kept at the same time; a day is some 400 kB. */
const mostKeptDays = 8;

/** Entries of the log that are looked at: the most that the host gives at once, and runs enough to compare. */
export const mostEvents = 1000;
const mostRuns = 5;

export function createHistoryFeed(door: Door): HistoryFeed {
  /** Newest question for each place: an answer to an older one is dropped. */
  const newest = new Map<string, number>();
  let asked = 0;

  async function fetchInto<M extends MonitorMethod>(
    shelf: keyof HistoryState,
    key: string,
    method: M,
    params: MonitorParams<M>,
  ): Promise<void> {
    const place = `${shelf} ${key}`;
    const number = ++asked;
    newest.set(place, number);
    // What is there already stays until the answer comes: no flicker on a refresh.
    if (useHistory.getState()[shelf][key]?.state !== 'ready') put(shelf, key, loading);
    const reply = await door.call(method, params);
    if (newest.get(place) !== number) return;
    put(shelf, key, loadedOf(reply));
  }

  return {
    loadDays: (site) => fetchInto('days', site, 'days', { site }),
    loadDay: (site, day) => fetchInto('curves', dayKey(site, day), 'day', { site, day }),
    loadRecent: (site, hours) => fetchInto('recent', site, 'recent', { site, hours }),
    wholeDay: (site, day) => door.call('day', { site, day, everyStep: true }),
    replay: (site, day) => fetchInto('replays', dayKey(site, day), 'replay', { site, day }),
    loadAlarmEvents: (site) =>
      fetchInto('alarmEvents', site, 'events', { site, limit: mostEvents, kinds: [...alarmEventKinds] }),
    loadCommissioningEvents: (site) =>
      fetchInto('commissioningEvents', site, 'events', {
        site,
        limit: mostRuns,
        kinds: ['commissioning-done', 'commissioning-ended'],
      }),
    loadLogFacts: (site) => fetchInto('logFacts', site, 'logFacts', { site }),
    loadAllowedHeat: (site) => fetchInto('allowedHeat', site, 'allowedHeat', { site }),
  };
}

function put(shelf: keyof HistoryState, key: string, entry: Loaded<MonitorResult<MonitorMethod>>): void {
  useHistory.setState((state) => {
    const { [key]: _before, ...others } = state[shelf] as Record<string, unknown>;
    const kept = Object.entries(others).slice(shelf === 'curves' ? 1 - mostKeptDays : 0);
    return { [shelf]: { ...Object.fromEntries(kept), [key]: entry } };
  });
}
