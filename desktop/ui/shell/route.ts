import { localDaySchema } from '../../../shared-types/engine.ts';
import { withSite } from './site-address.ts';

/** Where a person is. */
export type Route =
  | { readonly screen: 'live' }
  | { readonly screen: 'days'; readonly day: string | null }
  | { readonly screen: 'replay'; readonly day: string | null }
  | { readonly screen: 'setpoints' }
  | { readonly screen: 'alarms' }
  | { readonly screen: 'site' };

export type ScreenName = Route['screen'];
export const screenNames: readonly ScreenName[] = ['live', 'days', 'replay', 'setpoints', 'alarms', 'site'];

/** The route that an address such as #/days/2031-06-21 names; whatever it does not understand is Live. */
export function parseRoute(hash: string): Route {
  const [screen, day] = hash.replace(/^#\/?|\?.*$/g, '').split('/');
  if (day === undefined && (screen === 'setpoints' || screen === 'alarms' || screen === 'site'))
    return { screen };
  if (screen !== 'days' && screen !== 'replay') return { screen: 'live' };
  return { screen, day: localDaySchema.safeParse(day).data ?? null };
}

/** @param site - Named in the address; null: the one that is shown, whichever that is. */
export function formatRoute(route: Route, site: string | null = null): string {
  const day = !('day' in route) || route.day === null ? '' : `/${route.day}`;
  const place = `#/${route.screen}${day}`;
  return site === null ? place : withSite(place, site);
}
