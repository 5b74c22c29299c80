import type { HostState, SiteLive } from '../../shared-types/monitor-api.ts';
import { standing } from '../ui/store/new-alarms.ts';
import { en } from '../ui/text/en.ts';

const text = en.desktop;
/** Windows shows some 127 characters beside the clock; three sites of common names fit. */
const mostSites = 3;
const mostCharacters = 127;

/** What each loop does, in as many words as fit beside the clock. */
export function trayText(host: HostState | undefined, sites: readonly SiteLive[]): string {
  if (host?.brokerConnected === false) return text.brokerGone;
  if (sites.length === 0) return text.noSite;
  const lines = sites.slice(0, mostSites).map(siteText);
  if (sites.length > mostSites) lines.push(text.moreSites(sites.length - mostSites));
  return lines.join('\n').slice(0, mostCharacters);
}

function siteText(live: SiteLive): string {
  return text.siteState(titleOf(live), stateText(live));
}

export const titleOf = (live: SiteLive): string => live.site?.site.title ?? live.name;

function stateText({ status, snapshot }: SiteLive): string {
  if (status?.state === 'lost' || status?.state === 'stopped') return text.controllerStates[status.state];
  if (snapshot === null) return text.unknownState;
  const phase = en.phases[snapshot.decision.phase];
  const alarms = standing(snapshot.decision.alarms).length;
  return alarms === 0 ? phase : text.withAlarms(phase, en.shell.alarmCount(alarms));
}
