import type { ReactNode } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { selectDays, useHistory } from '../store/history-store.ts';
import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { useDays } from './use-days.ts';

interface Props {
  readonly children: (site: string, days: readonly DaySummary[]) => ReactNode;
}

/** Whatever needs the logged days of the site: they are asked for, and where there are none that is said. */
export function KeptDays({ children }: Props) {
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
          children(site, list)
        )
      }
    </LoadedView>
  );
}
