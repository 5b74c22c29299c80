import { SegmentedControl } from '@mantine/core';
import { useMediaQuery } from '@mantine/hooks';
import type { DaySummary } from '../../../shared-types/log.ts';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { choose, daysViewOf, daysViews, selectDaysView, useChoices } from '../store/choices-store.ts';
import { selectDays, useHistory } from '../store/history-store.ts';
import { en } from '../text/en.ts';
import styles from './all-days.module.css';
import { Calendar } from './calendar.tsx';
import { DayList } from './day-list.tsx';
import { DaysExport } from './days-export.tsx';
import { ForeignPart } from './foreign/foreign-part.tsx';
import { YearCalendar } from './year-calendar.tsx';

const text = en.days;

/** Every logged day, as a calendar or as a list. */
export function AllDays({ site }: { readonly site: string }) {
  const feed = useFeed();
  const days = useHistory(selectDays(site));
  return (
    <>
      <LoadedView loaded={days} onAgain={() => void feed.loadDays(site)}>
        {(list) => <Days days={list} />}
      </LoadedView>
      <ForeignPart key={site} site={site} />
    </>
  );
}

function Days({ days }: { readonly days: readonly DaySummary[] }) {
  const narrow = useMediaQuery('(max-width: 47em)', undefined, { getInitialValueInEffect: false });
  const view = daysViewOf(useChoices(selectDaysView), narrow === true);
  return (
    <>
      <div className={styles['head']}>
        <div>
          <h1 className={styles['title']}>{text.title}</h1>
          <p className={styles['lead']}>{text.lead}</p>
        </div>
        <SegmentedControl
          aria-label={text.view}
          value={view}
          data={daysViews.map((value) => ({ value, label: text.views[value] }))}
          onChange={(daysView) => choose({ daysView })}
        />
      </div>
      {days.length === 0 ? (
        <ProblemNote problem={{ severity: 'note', text: text.nothing, tip: text.nothingTip }} />
      ) : (
        <>
          {view === 'year' ? <YearCalendar days={days} /> : null}
          {view === 'calendar' ? <Calendar days={days} /> : null}
          {view === 'list' ? <DayList days={days} /> : null}
          <DaysExport days={days} />
        </>
      )}
    </>
  );
}
