import type { Alarm } from '../../../shared-types/alarms.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Decision } from '../../../shared-types/engine.ts';
import type { SiteMessage, SnapshotMessage } from '../../../shared-types/messages.ts';
import type { TrustedReading } from '../../../shared-types/readings.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { HeardSite, LiveState } from './live-store.ts';
import { own } from './own.ts';

/** One value of the live store each, so that a component is drawn anew only when its own changes. */
type Select<Value> = (state: LiveState) => Value;

export const selectDoor: Select<LiveState['door']> = (state) => state.door;

let lastSites: LiveState['sites'] | undefined;
let lastNames: readonly string[] = [];
/** Names in order; the same list as long as the names are the same. */
export const selectSiteNames: Select<readonly string[]> = (state) => {
  if (state.sites === lastSites) return lastNames;
  const names = Object.keys(state.sites).sort();
  if (names.join() !== lastNames.join()) lastNames = names;
  lastSites = state.sites;
  return lastNames;
};

/**
 * Name of the site that the screens show. One that was chosen stays, heard of or not: nothing of another
 * site is ever shown in its place.
 */
export const selectSiteName: Select<string | null> = (state) =>
  state.chosen ?? selectSiteNames(state)[0] ?? null;

/** True when the site that is shown was not heard of, or not any more. */
export const selectUnheard: Select<boolean> = (state) =>
  state.told && state.chosen !== null && own(state.sites, state.chosen) === undefined;

const heard: Select<HeardSite | undefined> = (state) => {
  const name = selectSiteName(state);
  return name === null ? undefined : own(state.sites, name);
};

export const selectSite: Select<Site | undefined> = (state) => heard(state)?.live.site?.site;
/** The newest message about the site, with the settings in force; null before the first. */
export const selectSiteMessage: Select<SiteMessage | null> = (state) => heard(state)?.live.site ?? null;
export const selectSnapshot: Select<SnapshotMessage | null> = (state) => heard(state)?.live.snapshot ?? null;
export const selectDecision: Select<Decision | undefined> = (state) => selectSnapshot(state)?.decision;
export const selectClockSpeed: Select<number> = (state) => selectSnapshot(state)?.clockSpeed ?? 1;
export const selectTimeZone: Select<string> = (state) => selectSite(state)?.timeZone ?? 'UTC';
export const selectSiteTitle: Select<string | null> = (state) => titleOf(state, selectSiteName(state));

export function titleOf(state: LiveState, name: string | null): string | null {
  return name === null ? null : (own(state.sites, name)?.live.site?.site.title ?? name);
}

/** Age of the newest snapshot, in whole seconds of the wall [ms]; null without one. */
export const selectSnapshotAgeMs: Select<number | null> = (state) => {
  const site = heard(state);
  if (site === undefined || site.live.snapshotAgeMs === null) return null;
  const ageMs = site.live.snapshotAgeMs + Math.max(0, state.nowMs - site.heardAtMs);
  return Math.floor(ageMs / 1000) * 1000;
};

/** Longest age at which a snapshot still counts as of now [ms of the wall]. */
export const selectFreshForMs: Select<number> = (state) =>
  Math.max(15_000, 3000 * (selectSite(state)?.control.stepS ?? 5));

/** Age by which the values on the screen lag behind the loop; 0 while the snapshots come in. */
export const selectLagMs: Select<number> = (state) => {
  const ageMs = selectSnapshotAgeMs(state) ?? 0;
  return ageMs > selectFreshForMs(state) ? ageMs : 0;
};

export const selectReading =
  (channel: Channel): Select<TrustedReading | undefined> =>
  (state) =>
    selectDecision(state)?.belief.readings[channel];

const noAlarms: readonly Alarm[] = [];
export const selectAlarms: Select<readonly Alarm[]> = (state) => selectDecision(state)?.alarms ?? noAlarms;

export const alarmsOf = (state: LiveState, name: string): readonly Alarm[] =>
  own(state.sites, name)?.live.snapshot?.decision.alarms ?? noAlarms;

/** True when this page may look and not ask. */
export const selectLookOnly: Select<boolean> = (state) => state.access.may === 'look';

/** True when somebody would hear a request of this page. */
export const selectListening: Select<boolean> = (state) =>
  state.door === 'open' &&
  state.access.may === 'ask' &&
  state.host?.brokerConnected === true &&
  heard(state)?.live.status?.state === 'online';

/** Day of the site's calendar that the controller now writes; undefined before the first snapshot. */
export const selectNowMs: Select<number | undefined> = (state) => selectDecision(state)?.nowMs;
