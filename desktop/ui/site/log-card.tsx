import { useEffect } from 'react';
import type { LogFacts } from '../../../shared-types/log.ts';
import { inLine } from '../format/numbers.ts';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { selectLogFacts, useHistory } from '../store/history-store.ts';
import { selectDoor, selectSnapshot } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { type Fact, FactList } from './fact-list.tsx';
import { StateWord } from './state-word.tsx';

const text = en.site.log;

const selectWritable = (state: LiveState) => selectSnapshot(state)?.log.writable ?? false;
const selectRemark = (state: LiveState) => selectSnapshot(state)?.log.remark ?? null;

/** Whether the log is written, and what it holds. */
export function LogCard({ site }: { readonly site: string }) {
  const feed = useFeed();
  const door = useLive(selectDoor);
  const facts = useHistory(selectLogFacts(site));
  const load = () => void feed.loadLogFacts(site);
  useEffect(() => {
    if (door === 'open') void feed.loadLogFacts(site);
  }, [feed, door, site]);
  return (
    <Card heading={text.heading}>
      <Written />
      <LoadedView loaded={facts} onAgain={load}>
        {(loaded) => <Holds facts={loaded} />}
      </LoadedView>
    </Card>
  );
}

function Written() {
  const writable = useLive(selectWritable);
  const remark = useLive(selectRemark) ?? en.banners.logNotWritableUnsaid;
  const state = <StateWord good={writable}>{writable ? text.writable : text.notWritable(remark)}</StateWord>;
  return <FactList facts={[[text.state, state]]} />;
}

function Holds({ facts: { sizeBytes, firstMs, lastMs, days, steps, runs } }: { readonly facts: LogFacts }) {
  const numbers = useNumbers();
  const times = useTimes();
  const span =
    firstMs === null || lastMs === null ? text.empty : text.to(times.instant(firstMs), times.instant(lastMs));
  const facts: readonly Fact[] = [
    [text.size, inLine(numbers.bytes(sizeBytes))],
    [text.span, span],
    [text.days, numbers.count(days)],
    [text.steps, numbers.count(steps)],
    [text.runs, numbers.count(runs)],
  ];
  return <FactList facts={facts} />;
}
