import { Button } from '@mantine/core';
import type { DaySummary } from '../../../shared-types/log.ts';
import { useDayCurves } from '../days/use-days.ts';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { selectCurves, selectReplay, useHistory } from '../store/history-store.ts';
import { en } from '../text/en.ts';
import { DaySelect, ReplayHead } from './replay-head.tsx';
import { ReplayResult } from './replay-result.tsx';
import { ScrubCard } from './scrub-card.tsx';

interface Props {
  readonly site: string;
  readonly asked: string | null;
  readonly day: string;
  readonly days: readonly DaySummary[];
}

/** Whether the same logic would decide the same again, and a walk through the day. */
export function SameAgain({ site, asked, day, days }: Props) {
  const feed = useFeed();
  const running = useHistory(selectReplay(site, day))?.state === 'loading';
  const curves = useHistory(selectCurves(site, day));
  const load = useDayCurves(site, day);
  return (
    <>
      <ReplayHead part={undefined} asked={asked}>
        <DaySelect part={undefined} day={day} days={days} />
        <Button disabled={running} onClick={() => void feed.replay(site, day)}>
          {en.replay.run}
        </Button>
      </ReplayHead>
      <ReplayResult site={site} day={day} />
      <LoadedView loaded={curves} onAgain={load}>
        {(loaded) =>
          loaded.atMs.length < 2 ? <p>{en.days.noCurves}</p> : <ScrubCard key={day} curves={loaded} />
        }
      </LoadedView>
    </>
  );
}
