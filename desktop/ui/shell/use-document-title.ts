import { useEffect } from 'react';
import { selectAlarms, selectDecision, selectDoor, selectSiteTitle } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { standing } from '../store/new-alarms.ts';
import { en } from '../text/en.ts';
import type { Route } from './route.ts';

/** What a person wants to know of a page that lies behind others: alarms first, else the phase. */
const selectState = (state: LiveState): string | undefined => {
  const alarms = standing(selectAlarms(state)).length;
  if (alarms > 0) return en.shell.alarmCount(alarms);
  const phase = selectDecision(state)?.phase;
  return phase === undefined ? undefined : en.phases[phase];
};

/** Keeps the title of the page: the state on Live, else the screen's name, and the site. */
export function useDocumentTitle(route: Route): void {
  const state = useLive(selectState);
  const site = useLive(selectSiteTitle);
  const shut = useLive(selectDoor) === 'shut';
  const screen = en.shell.screens[route.screen];
  useEffect(() => {
    if (shut) {
      document.title = en.shell.titleOf(en.signIn.title, location.host);
      return;
    }
    const first = route.screen === 'live' ? (state ?? screen) : screen;
    document.title = en.shell.titleOf(first, site ?? '…');
  }, [shut, route.screen, state, screen, site]);
}
