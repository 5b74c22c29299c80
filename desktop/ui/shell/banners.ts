import type { Problem } from '../../../shared-types/monitor-api.ts';
import { durationText } from '../format/times.ts';
import {
  selectLagMs,
  selectLookOnly,
  selectSiteName,
  selectSnapshot,
  selectUnheard,
} from '../store/live-selectors.ts';
import type { LiveState } from '../store/live-store.ts';
import { own } from '../store/own.ts';
import { en } from '../text/en.ts';

const problem = (severity: Problem['severity'], text: string, tip?: string): Problem => ({
  severity,
  text,
  ...(tip === undefined ? {} : { tip }),
});

/**
 * What stands between the loop and its reader, most telling first. When the monitor itself is gone,
 * nothing that it last said about others is repeated as if it were true now.
 */
export function bannersOf(state: LiveState): readonly Problem[] {
  const { banners } = en;
  if (state.door === 'connecting') return [problem('note', banners.connecting)];
  // The sign-in stands in place of the screens and says it all.
  if (state.door === 'shut') return [];
  if (state.door === 'down')
    return [problem('error', banners.doorDown, banners.doorDownTip), ...oldValues(state)];
  const { host } = state;
  if (host === null) return [problem('note', banners.connecting)];
  if (!host.brokerConnected)
    return [
      problem('error', banners.brokerGone(host.brokerUrl), banners.brokerGoneTip),
      ...oldValues(state),
      ...host.problems,
    ];
  if (selectSiteName(state) === null)
    return state.told
      ? [problem('note', banners.noSite(host.brokerUrl), banners.noSiteTip), ...host.problems]
      : [];
  if (selectUnheard(state))
    return [
      problem('warning', banners.siteUnheard(selectSiteName(state) ?? ''), banners.siteUnheardTip),
      ...host.problems,
    ];
  return [...controllerProblems(state), ...host.problems, ...lookOnly(state), ...simulated(state)];
}

function controllerProblems(state: LiveState): readonly Problem[] {
  const { banners } = en;
  const name = selectSiteName(state) ?? '';
  const status = own(state.sites, name)?.live.status?.state;
  if (status === 'lost')
    return [problem('error', banners.controllerLost, banners.controllerLostTip), ...oldValues(state)];
  if (status === 'stopped')
    return [problem('warning', banners.controllerStopped, banners.controllerStoppedTip), ...oldValues(state)];
  return [...oldValues(state), ...clockApart(state), ...linkProblems(state)];
}

function oldValues(state: LiveState): readonly Problem[] {
  const lagMs = selectLagMs(state);
  if (lagMs === 0) return [];
  // In steps of ten seconds at least: a screen reader says each new text.
  const age = durationText(Math.floor(lagMs / 10_000) * 10_000);
  return [problem('warning', en.banners.snapshotOld(age), en.banners.snapshotOldTip)];
}

/** Clocks that are apart by more make the controller refuse requests [ms]; a request lives for eight seconds. */
const mostApartMs = 5000;

function clockApart(state: LiveState): readonly Problem[] {
  const { banners } = en;
  const aheadMs = own(state.sites, selectSiteName(state) ?? '')?.live.clockAheadMs ?? null;
  if (aheadMs === null || Math.abs(aheadMs) <= mostApartMs) return [];
  // To a minute, or ten seconds below: a screen reader says each new text.
  const stepMs = Math.abs(aheadMs) < 60_000 ? 10_000 : 60_000;
  const apart = durationText(Math.max(stepMs, Math.round(Math.abs(aheadMs) / stepMs) * stepMs));
  const text = aheadMs > 0 ? banners.clockAhead(apart) : banners.clockBehind(apart);
  return [problem('warning', text, banners.clockApartTip)];
}

function linkProblems(state: LiveState): readonly Problem[] {
  const { banners } = en;
  const snapshot = selectSnapshot(state);
  if (snapshot === null) return [];
  const found: Problem[] = [];
  if (!snapshot.link.connected) found.push(problem('error', banners.linkDown, banners.linkDownTip));
  if (!snapshot.log.writable) {
    const remark = snapshot.log.remark ?? banners.logNotWritableUnsaid;
    found.push(problem('warning', banners.logNotWritable(remark), banners.logNotWritableTip));
  }
  return found;
}

function lookOnly(state: LiveState): readonly Problem[] {
  const { lookOnly, lookOnlyTip } = en.banners;
  return selectLookOnly(state) ? [problem('note', lookOnly, lookOnlyTip)] : [];
}

function simulated(state: LiveState): readonly Problem[] {
  const { clockSpeed = 1, simulatedClock = false } = selectSnapshot(state) ?? {};
  if (clockSpeed !== 1) return [problem('note', en.banners.clockFast(String(clockSpeed)))];
  return simulatedClock ? [problem('note', en.banners.clockOwn)] : [];
}
