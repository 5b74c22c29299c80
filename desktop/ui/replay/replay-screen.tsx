import type { DaySummary } from '../../../shared-types/log.ts';
import { newestComplete } from '../days/calendar.ts';
import { useDays } from '../days/use-days.ts';
import { useToday } from '../days/use-today.ts';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import type { ReplayPart } from '../shell/route.ts';
import { selectDays, useHistory } from '../store/history-store.ts';
import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { ManySetpoints } from './many/many-setpoints.tsx';
import { OtherSetpoints } from './other/other-setpoints.tsx';
import styles from './replay-screen.module.css';
import { SameAgain } from './same-again.tsx';

interface Props {
  readonly day: string | null;
  readonly part: ReplayPart | undefined;
}

/** Logged days again: decided by the same logic, lived under other setpoints, or under many. */
export default function ReplayScreen({ day, part }: Props) {
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
          <Replay site={site} asked={day} part={part} days={list} />
        )
      }
    </LoadedView>
  );
}

interface ReplayProps {
  readonly site: string;
  readonly asked: string | null;
  readonly part: ReplayPart | undefined;
  readonly days: readonly DaySummary[];
}

function Replay({ site, asked, part, days }: ReplayProps) {
  const today = useToday();
  const day = asked ?? newestComplete(days, today) ?? '';
  const common = { site, asked, day, days };
  return (
    <div className={styles['replay']}>
      {part === undefined ? <SameAgain {...common} /> : null}
      {part === 'other' ? <OtherSetpoints {...common} /> : null}
      {part === 'many' ? <ManySetpoints {...common} today={today} /> : null}
    </div>
  );
}
