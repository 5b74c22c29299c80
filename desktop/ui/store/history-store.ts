import { create } from 'zustand';
import type { AllowedHeat } from '../../../shared-types/allowed-heat.ts';
import type { DayCurves, DaySummary, LogEvent, LogFacts, ReplayReport } from '../../../shared-types/log.ts';
import type { Loaded } from './loaded.ts';
import { own } from './own.ts';

export interface HistoryState {
  /** By site. */
  readonly days: Readonly<Record<string, Loaded<readonly DaySummary[]>>>;
  /** By `site/day`. */
  readonly curves: Readonly<Record<string, Loaded<DayCurves>>>;
  /** By site: the last hours. */
  readonly recent: Readonly<Record<string, Loaded<DayCurves>>>;
  /** By `site/day`. */
  readonly replays: Readonly<Record<string, Loaded<ReplayReport>>>;
  /** By site: what happened to its alarms, the newest first. */
  readonly alarmEvents: Readonly<Record<string, Loaded<readonly LogEvent[]>>>;
  /** By site: commissioning runs that ended, the newest first. */
  readonly commissioningEvents: Readonly<Record<string, Loaded<readonly LogEvent[]>>>;
  /** By site. */
  readonly logFacts: Readonly<Record<string, Loaded<LogFacts>>>;
  /** By site: the newest day's. */
  readonly allowedHeat: Readonly<Record<string, Loaded<AllowedHeat>>>;
}

export const emptyHistory: HistoryState = {
  days: {},
  curves: {},
  recent: {},
  replays: {},
  alarmEvents: {},
  commissioningEvents: {},
  logFacts: {},
  allowedHeat: {},
};

/** What the log said when it was asked. Only the feed writes it. */
export const useHistory = create<HistoryState>(() => emptyHistory);

export const dayKey = (site: string, day: string): string => `${site}/${day}`;

type Select<Value> = (state: HistoryState) => Value;

export const selectDays =
  (site: string): Select<Loaded<readonly DaySummary[]> | undefined> =>
  (state) =>
    own(state.days, site);
export const selectCurves =
  (site: string, day: string): Select<Loaded<DayCurves> | undefined> =>
  (state) =>
    state.curves[dayKey(site, day)];
export const selectRecent =
  (site: string): Select<Loaded<DayCurves> | undefined> =>
  (state) =>
    own(state.recent, site);
export const selectReplay =
  (site: string, day: string): Select<Loaded<ReplayReport> | undefined> =>
  (state) =>
    state.replays[dayKey(site, day)];
export const selectAlarmEvents =
  (site: string): Select<Loaded<readonly LogEvent[]> | undefined> =>
  (state) =>
    own(state.alarmEvents, site);
export const selectCommissioningEvents =
  (site: string): Select<Loaded<readonly LogEvent[]> | undefined> =>
  (state) =>
    own(state.commissioningEvents, site);
export const selectLogFacts =
  (site: string): Select<Loaded<LogFacts> | undefined> =>
  (state) =>
    own(state.logFacts, site);
export const selectAllowedHeat =
  (site: string): Select<Loaded<AllowedHeat> | undefined> =>
  (state) =>
    own(state.allowedHeat, site);
