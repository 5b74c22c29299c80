import type { LinkHealth } from '../../../shared-types/messages.ts';
import type { Site } from '../../../shared-types/site.ts';
import { durationText } from '../format/times.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { selectSite, selectSiteName, selectSnapshot, selectSnapshotAgeMs } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { own } from '../store/own.ts';
import { en } from '../text/en.ts';
import { type Fact, FactList } from './fact-list.tsx';
import { StateWord } from './state-word.tsx';

const text = en.site.links;

const selectHost = (state: LiveState) => state.host;
const selectLink = (state: LiveState) => selectSnapshot(state)?.link;
const selectStatus = (state: LiveState) => {
  const name = selectSiteName(state);
  return name === null ? undefined : own(state.sites, name)?.live.status?.state;
};

/** Every connection from this page to the device, nearest first. */
export function LinkCard() {
  const host = useLive(selectHost);
  const status = useLive(selectStatus);
  const ageMs = useLive(selectSnapshotAgeMs);
  const broker: readonly Fact[] =
    host === null
      ? []
      : [
          [
            text.broker,
            <StateWord key="state" good={host.brokerConnected}>
              {host.brokerConnected ? text.connected : text.disconnected}, {host.brokerUrl}
            </StateWord>,
          ],
        ];
  const controller: readonly Fact[] = [
    [
      text.controller,
      status === undefined ? (
        en.site.unknown
      ) : (
        <StateWord key="state" good={status === 'online'}>
          {text.statuses[status]}
        </StateWord>
      ),
    ],
    [text.snapshot, ageMs === null ? en.site.unknown : text.ago(durationText(ageMs))],
  ];
  return (
    <Card heading={text.heading}>
      <FactList facts={[...broker, ...controller]} />
      <DeviceLink />
    </Card>
  );
}

function DeviceLink() {
  const link = useLive(selectLink);
  const site = useLive(selectSite);
  const numbers = useNumbers();
  if (link === undefined || site === undefined) return null;
  const facts: readonly Fact[] = [
    [
      text.device,
      <StateWord key="state" good={link.connected}>
        {link.connected ? text.connected : text.disconnected}, {wayOf(link, site)}
      </StateWord>,
    ],
    [text.taken, numbers.count(link.taken)],
    [text.ignored, numbers.count(link.ignored)],
    ...(link.lastIgnored === null ? [] : [[text.lastIgnored, link.lastIgnored] as const]),
    [text.losses, numbers.count(link.losses)],
  ];
  return <FactList facts={facts} />;
}

function wayOf({ kind }: LinkHealth, { link }: Site): string {
  const where = link.kind === 'serial' ? link.path : (link.url ?? text.ownBroker);
  return `${text.kinds[kind]}, ${where}`;
}
