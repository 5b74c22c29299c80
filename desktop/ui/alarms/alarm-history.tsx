import { Button } from '@mantine/core';
import { useMemo, useState } from 'react';
import type { LogEvent } from '../../../shared-types/log.ts';
import { Card } from '../shell/card.tsx';
import { LoadedView } from '../shell/loaded-view.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { mostEvents } from '../store/history-feed.ts';
import { selectAlarmEvents, useHistory } from '../store/history-store.ts';
import { en } from '../text/en.ts';
import styles from './alarm-history.module.css';
import { EpisodeFilters } from './episode-filters.tsx';
import { EpisodeRow } from './episode-row.tsx';
import { type Episode, type EpisodeFilter, episodesOf, fittingEpisodes } from './episodes.ts';
import { useMinute } from './use-now.ts';

const text = en.alarms.history;

interface Props {
  readonly site: string;
  readonly onAgain: () => void;
}

/** Every alarm that the log holds, the newest first. */
export function AlarmHistory({ site, onAgain }: Props) {
  const events = useHistory(selectAlarmEvents(site));
  return (
    <Card heading={text.heading}>
      <LoadedView loaded={events} onAgain={onAgain}>
        {(loaded) => <Episodes events={loaded} />}
      </LoadedView>
    </Card>
  );
}

const everything: EpisodeFilter = { priority: 'any', words: '', span: 'all' };

function Episodes({ events }: { readonly events: readonly LogEvent[] }) {
  const numbers = useNumbers();
  const nowMs = useMinute();
  const [filter, setFilter] = useState(everything);
  const all = useMemo(() => episodesOf(events), [events]);
  const fitting = fittingEpisodes(all, filter, nowMs);
  if (all.length === 0) return <p>{text.none}</p>;
  return (
    <>
      <EpisodeFilters filter={filter} onChange={setFilter} />
      <p role="status" className={styles['soft']}>
        {fitting.length === 0 ? text.noneFits : text.count(fitting.length, all.length)}
      </p>
      {events.length < mostEvents ? null : (
        <p className={styles['soft']}>{text.cut(numbers.count(mostEvents))}</p>
      )}
      <Rows key={JSON.stringify(filter)} episodes={fitting} nowMs={nowMs} />
    </>
  );
}

/** Rows that are shown at first, and that come with each further wish. */
const rowsAtOnce = 20;

function Rows({ episodes, nowMs }: { readonly episodes: readonly Episode[]; readonly nowMs: number }) {
  const [most, setMost] = useState(rowsAtOnce);
  const hidden = Math.min(rowsAtOnce, episodes.length - most);
  return (
    <>
      <ol className={styles['rows']}>
        {episodes.slice(0, most).map((episode) => (
          <EpisodeRow key={`${episode.code} ${episode.raisedMs}`} episode={episode} nowMs={nowMs} />
        ))}
      </ol>
      {hidden <= 0 ? null : (
        <Button variant="default" size="xs" mt="sm" onClick={() => setMost(most + rowsAtOnce)}>
          {text.more(hidden)}
        </Button>
      )}
    </>
  );
}
