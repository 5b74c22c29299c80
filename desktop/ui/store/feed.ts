import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { RequestedOperation } from '../../../shared-types/messages.ts';
import { openAccess } from '../../../shared-types/monitor-access.ts';
import type { MonitorEvent, SiteLive } from '../../../shared-types/monitor-api.ts';
import type { Door, DoorState } from '../door.ts';
import type { SignInOutcome } from '../gate.ts';
import { en } from '../text/en.ts';
import { useAnnouncements } from './announcement-store.ts';
import { createHistoryFeed, type HistoryFeed } from './history-feed.ts';
import { createImportFeed, type ImportFeed } from './import-feed.ts';
import { selectAlarms, selectSiteName } from './live-selectors.ts';
import { useLive } from './live-store.ts';
import { newAlarms } from './new-alarms.ts';
import { answerOf, useAsked } from './request-store.ts';
import { createSettingsFeed, type SettingsFeed } from './settings-feed.ts';
import { createTuningFeed, type TuningFeed } from './tuning-feed.ts';

/** The one writer of the stores: it turns what the host says into what the screens show. */
export interface Feed extends HistoryFeed, ImportFeed, SettingsFeed, TuningFeed {
  choose(site: string): void;
  request(site: string, operation: RequestedOperation): Promise<void>;
  /** Shows the monitor a token; what follows is read from the stores. */
  signIn(token: string): Promise<SignInOutcome>;
  signOut(): Promise<void>;
  stop(): void;
}

/** @param steadyMs - A clock that never steps back [ms]. */
export function startFeed(door: Door, steadyMs: () => number): Feed {
  const keep = (live: SiteLive) => {
    const alarmsBefore = selectAlarms(useLive.getState());
    useLive.setState((state) => ({
      sites: { ...state.sites, [live.name]: { live, heardAtMs: steadyMs() } },
      nowMs: steadyMs(),
    }));
    announce(alarmsBefore);
    settleOnSite();
  };
  const hear = (event: MonitorEvent) => {
    if (event.kind === 'host') useLive.setState({ host: event.host });
    else if (event.kind === 'live') keep(event.live);
    else forget(event.site);
  };
  const enter = async (state: DoorState) => {
    useLive.setState({ door: state, access: door.gate?.latest() ?? openAccess });
    if (state !== 'open') return;
    const [host, sites] = await Promise.all([door.call('hostState', {}), door.call('sites', {})]);
    if (host.ok) useLive.setState({ host: host.result });
    if (!sites.ok) return;
    const told = sites.result.map(({ name }) => name);
    for (const name of Object.keys(useLive.getState().sites)) if (!told.includes(name)) forget(name);
    for (const live of sites.result) keep(live);
    useLive.setState({ told: true });
    settleOnSite();
  };

  const stopListening = door.listen(hear);
  const stopWatching = door.watch(enter);
  const ticking = setInterval(() => useLive.setState({ nowMs: steadyMs() }), 1000);
  void enter(door.state());

  const history = createHistoryFeed(door);
  return {
    ...history,
    ...createImportFeed(door, history.loadDays),
    ...createSettingsFeed(door),
    ...createTuningFeed(door),
    choose,
    request: (site, operation) => ask(door, site, operation),
    signIn: async (token) => (await door.gate?.signIn(token)) ?? { kind: 'in' },
    signOut: async () => door.gate?.signOut(),
    stop() {
      stopListening();
      stopWatching();
      clearInterval(ticking);
    },
  };
}

function forget(site: string): void {
  useLive.setState(({ sites: { [site]: _gone, ...sites } }) => ({ sites }));
}

/** Shows another site. What was asked of the one before is no news of this one. */
function choose(site: string): void {
  if (useLive.getState().chosen === site) return;
  useLive.setState({ chosen: site });
  useAsked.setState({ asked: { state: 'none' } });
}

/** Stays at the site that is shown first, whichever others are heard later. */
function settleOnSite(): void {
  const state = useLive.getState();
  const first = selectSiteName(state);
  if (state.told && first !== null) choose(first);
}

/** Speaks what is new among the alarms of the site that is shown. */
function announce(before: Parameters<typeof newAlarms>[0]): void {
  const fresh = newAlarms(before, selectAlarms(useLive.getState()));
  if (fresh.length === 0) return;
  const titles = fresh.map((alarm) => alarmCatalogue[alarm.code].title).join(', ');
  useAnnouncements.setState({ alert: en.live.alarms.announce(titles) });
}

async function ask(door: Door, site: string, operation: RequestedOperation): Promise<void> {
  useAsked.setState({ asked: { state: 'asking' }, operation });
  const reply = await door.call('request', { site, operation });
  if (selectSiteName(useLive.getState()) !== site) return;
  useAsked.setState({ asked: answerOf(reply) });
}
