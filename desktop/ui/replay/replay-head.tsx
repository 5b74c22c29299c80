import { Button, NativeSelect } from '@mantine/core';
import type { DaySummary } from '../../../shared-types/log.ts';
import { useFeed } from '../shell/feed-context.ts';
import { useAddress } from '../shell/use-address.ts';
import { useTimes } from '../shell/use-formats.ts';
import { selectReplay, useHistory } from '../store/history-store.ts';
import { en } from '../text/en.ts';
import styles from './replay-head.module.css';

const text = en.replay;

interface Props {
  readonly site: string;
  readonly day: string;
  readonly days: readonly DaySummary[];
}

/** Which day, and the button that replays it. */
export function ReplayHead({ site, day, days }: Props) {
  const address = useAddress();
  const feed = useFeed();
  const times = useTimes();
  const running = useHistory(selectReplay(site, day))?.state === 'loading';
  const newestFirst = days
    .map((summary) => summary.day)
    .sort()
    .reverse();
  // A day in the address that was never logged is shown all the same: the answer says so.
  const offered = newestFirst.includes(day) ? newestFirst : [day, ...newestFirst];
  return (
    <div className={styles['head']}>
      <div className={styles['words']}>
        <h1 className={styles['title']}>{text.title}</h1>
        <p>{text.lead}</p>
      </div>
      <div className={styles['controls']}>
        <NativeSelect
          label={text.day}
          value={day}
          data={offered.map((value) => ({ value, label: times.day(value) }))}
          onChange={(event) => {
            window.location.hash = address({ screen: 'replay', day: event.currentTarget.value });
          }}
        />
        <Button disabled={running} onClick={() => void feed.replay(site, day)}>
          {text.run}
        </Button>
      </div>
    </div>
  );
}
