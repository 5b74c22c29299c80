import { localDaySchema } from '../../../shared-types/engine.ts';
import { withSite } from './site-address.ts';

/** The parts of Replay but for the first. */
const replayParts = ['other', 'many'] as const;
export type ReplayPart = (typeof replayParts)[number];

/** Stands in an address for the newest day, where something follows. */
const newest = 'newest';

/** Where a person is. */
export type Route =
  | { readonly screen: 'live' }
  | { readonly screen: 'days'; readonly day: string | null }
  /** Without a part: the first of them. */
  | { readonly screen: 'replay'; readonly day: string | null; readonly part?: ReplayPart }
  | { readonly screen: 'pan-check' }
  | { readonly screen: 'setpoints' }
  | { readonly screen: 'alarms' }
  | { readonly screen: 'site' };

export type ScreenName = Route['screen'];
export const screenNames: readonly ScreenName[] = [
  'live',
  'days',
  'replay',
  'pan-check',
  'setpoints',
  'alarms',
  'site',
];

/** Screens that have nothing more in their address. */
const plainScreens = ['pan-check', 'setpoints', 'alarms', 'site'] as const;

/** The route that an address such as #/days/2031-06-21 names; whatever it does not understand is Live. */
export function parseRoute(hash: string): Route {
  const [screen, day, named] = hash.replace(/^#\/?|\?.*$/g, '').split('/');
  const plain = plainScreens.find((one) => one === screen);
  if (day === undefined && plain !== undefined) return { screen: plain };
  if (screen !== 'days' && screen !== 'replay') return { screen: 'live' };
  const part = screen === 'replay' ? replayParts.find((one) => one === named) : undefined;
  const kept = localDaySchema.safeParse(day).data ?? null;
  return { screen, day: kept, ...(part === undefined ? {} : { part }) };
}

/** @param site - Named in the address; null: the one that is shown, whichever that is. */
export function formatRoute(route: Route, site: string | null = null): string {
  const part = 'part' in route && route.part !== undefined ? `/${route.part}` : '';
  const named = 'day' in route ? (route.day ?? (part === '' ? null : newest)) : null;
  const place = `#/${route.screen}${named === null ? '' : `/${named}`}${part}`;
  return site === null ? place : withSite(place, site);
}
