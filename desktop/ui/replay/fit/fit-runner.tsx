import { Button, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { DaySummary } from '../../../../shared-types/log.ts';
import { useToday } from '../../days/use-today.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { JobLine } from '../../shell/job-line.tsx';
import { selectLookOnly } from '../../store/live-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import { selectFit, useTuning } from '../../store/tuning-store.ts';
import { en } from '../../text/en.ts';
import { newestDays, wholeNumber } from '../chosen-days.ts';
import styles from '../tuning.module.css';

const text = en.tuning.fit;

/** Days that a fit takes unless told otherwise. A design choice. */
const usualDays = '5';

/** The button that fits the loop to the newest days. */
export function FitRunner({ site, days }: { readonly site: string; readonly days: readonly DaySummary[] }) {
  const feed = useFeed();
  const today = useToday();
  const lookOnly = useLive(selectLookOnly);
  const run = useTuning(selectFit(site));
  const [count, setCount] = useState(usualDays);
  const number = wholeNumber(count);
  const chosen = newestDays(days, today, number ?? 0);
  const fault = number === null ? en.tuning.many.faults.number : undefined;
  if (lookOnly) return <p className={styles['soft']}>{text.lookOnly}</p>;
  return (
    <div>
      <p className={styles['soft']}>{text.lead}</p>
      <div className={styles['row']}>
        <TextInput
          label={text.count}
          inputMode="numeric"
          autoComplete="off"
          w="8rem"
          value={count}
          error={fault}
          onChange={(event) => setCount(event.currentTarget.value)}
        />
        <Button
          variant="default"
          disabled={chosen.length === 0 || run?.outcome.state === 'running'}
          onClick={() => void feed.fit(site, chosen)}
        >
          {text.run}
        </Button>
      </div>
      {number !== null && chosen.length < number ? (
        <p className={styles['soft']}>{text.fewer(chosen.length)}</p>
      ) : null}
      <JobLine outcome={run?.outcome} onCancel={() => feed.cancelFit()} />
    </div>
  );
}
