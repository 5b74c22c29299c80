import type { SiteLive } from '../../shared-types/monitor-api.ts';
import { assertNever } from './assert-never.ts';
import type { Heard, Retained } from './message-reader.ts';

type Live = Exclude<Heard, { kind: 'answer' | 'malformed' }>;
type Entry = Pick<SiteLive, 'status' | 'site' | 'snapshot' | 'clockAheadMs'> & { snapshotAtMs: number };

/** The newest that was heard of each site. */
export interface SiteRegistry {
  /** @returns false when there are already too many sites to take another. */
  take(heard: Live, retained: boolean): boolean;
  live(site: string): SiteLive | undefined;
  all(): SiteLive[];
}

/** Most sites that are kept; a broker full of invented names must not fill the memory. */
const mostSites = 500;

const unheard: Entry = { status: null, site: null, snapshot: null, snapshotAtMs: 0, clockAheadMs: null };

/** @param nowMs - The wall clock [UTC ms]. */
export function createSiteRegistry(nowMs: () => number): SiteRegistry {
  const entries = new Map<string, Entry>();

  function live(name: string): SiteLive | undefined {
    const entry = entries.get(name);
    if (entry === undefined) return undefined;
    const { snapshotAtMs, ...kept } = entry;
    return {
      name,
      ...kept,
      snapshotAgeMs: kept.snapshot === null ? null : Math.max(0, nowMs() - snapshotAtMs),
    };
  }

  return {
    take(heard, retained) {
      if (!entries.has(heard.site) && entries.size >= mostSites) return false;
      const before = entries.get(heard.site) ?? unheard;
      const after = updated(before, heard, retained, nowMs());
      // Where everything was taken back there is no site: its place is free for another.
      if (after.status === null && after.site === null && after.snapshot === null) entries.delete(heard.site);
      else entries.set(heard.site, after);
      return true;
    },
    live,
    all: () => [...entries.keys()].sort().flatMap((name) => live(name) ?? []),
  };
}

function updated(before: Entry, heard: Live, retained: boolean, nowMs: number): Entry {
  switch (heard.kind) {
    case 'snapshot':
      return {
        ...before,
        snapshot: heard.message,
        snapshotAtMs: bornMs(heard.message, retained, nowMs),
        clockAheadMs: retained ? before.clockAheadMs : aheadMs(heard.message, nowMs),
      };
    case 'status':
      return { ...before, status: heard.message };
    case 'site':
      return { ...before, site: heard.message };
    case 'cleared':
      return { ...before, ...nothing[heard.what] };
    default:
      return assertNever(heard);
  }
}

const nothing: Readonly<Record<Retained, Partial<Entry>>> = {
  snapshot: { snapshot: null, clockAheadMs: null },
  status: { status: null },
  site: { site: null },
};

/**
 * Instant from which a snapshot's age counts. One that the broker had kept may be days old: its own
 * calendar tells, unless it is that of a simulated loop.
 */
function bornMs(message: NonNullable<SiteLive['snapshot']>, retained: boolean, nowMs: number): number {
  return retained && !isSimulated(message) ? Math.min(nowMs, message.decision.nowMs) : nowMs;
}

/** A step that took a second on its way makes the clocks seem a second apart, no more. */
function aheadMs(message: NonNullable<SiteLive['snapshot']>, nowMs: number): number | null {
  return isSimulated(message) ? null : message.decision.nowMs - nowMs;
}

/** A controller from before it was told is known by its speed alone. */
const isSimulated = ({ simulatedClock, clockSpeed }: NonNullable<SiteLive['snapshot']>): boolean =>
  simulatedClock || clockSpeed !== 1;
