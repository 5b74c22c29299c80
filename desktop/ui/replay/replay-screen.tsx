import { newestComplete } from '../days/calendar.ts';
import { useDayCurves, useDays } from '../days/use-days.ts';
import { useToday } from '../days/use-today.ts';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { selectCurves, selectDays, useHistory } from '../store/history-store.ts';
import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { readyValue } from '../store/loaded.ts';
import { en } from '../text/en.ts';
import { ReplayHead } from './replay-head.tsx';
import { ReplayResult } from './replay-result.tsx';
import styles from './replay-screen.module.css';
import { ScrubCard } from './scrub-card.tsx';

/** Whether the same logic would decide the same again, and a walk through the day. */
export default function ReplayScreen({ day }: { readonly day: string | null }) {
  const site = useLive(selectSiteName);
  const feed = useFeed();
  useDays(site);
  const days = useHistory(selectDays(site ?? ''));
  if (site === null) return null;
  return (
    <LoadedView loaded={days} onAgain={() => void feed.loadDays(site)}>
      {(list) =>
        list.length === 0 ? (
          <ProblemNote problem={{ severity: 'note', text: en.days.nothing, tip: en.days.nothingTip }} />
        ) : (
          <Replay site={site} asked={day} />
        )
      }
    </LoadedView>
  );
}

function Replay({ site, asked }: { readonly site: string; readonly asked: string | null }) {
  const today = useToday();
  const days = readyValue(useHistory(selectDays(site))) ?? [];
  const day = asked ?? newestComplete(days, today) ?? '';
  const curves = useHistory(selectCurves(site, day));
  const load = useDayCurves(site, day);
  return (
    <div className={styles['replay']}>
      <ReplayHead site={site} day={day} days={days} />
      <ReplayResult site={site} day={day} />
      <LoadedView loaded={curves} onAgain={load}>
        {(loaded) =>
          loaded.atMs.length < 2 ? <p>{en.days.noCurves}</p> : <ScrubCard key={day} curves={loaded} />
        }
      </LoadedView>
    </div>
  );
}
