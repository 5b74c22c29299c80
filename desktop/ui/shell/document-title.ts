import { alarmsOf, selectDecision, selectSiteTitle } from '../store/live-selectors.ts';
import type { LiveState } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import type { ScreenName } from './route.ts';

const unseenStates: readonly string[] = ['unacknowledged', 'returned-unacknowledged'];

/** Alarms of all sites that nobody has seen yet. */
function unseenAlarms(state: LiveState): number {
  const all = Object.keys(state.sites).flatMap((name) => alarmsOf(state, name));
  return all.filter((alarm) => unseenStates.includes(alarm.state)).length;
}

/**
 * What a person wants to know of a page that lies behind others: how many alarms nobody has seen, then
 * the phase on Live, else the screen's name, and the site.
 * @param host - Where the page came from, for as long as it may show nothing else.
 */
export function documentTitle(state: LiveState, screen: ScreenName, host: string): string {
  const { titleOf, unseen, screens } = en.shell;
  if (state.door === 'shut') return titleOf(en.signIn.title, host);
  const phase = screen === 'live' ? selectDecision(state)?.phase : undefined;
  const title = titleOf(
    phase === undefined ? screens[screen] : en.phases[phase],
    selectSiteTitle(state) ?? '…',
  );
  const count = unseenAlarms(state);
  return count === 0 ? title : unseen(count, title);
}
