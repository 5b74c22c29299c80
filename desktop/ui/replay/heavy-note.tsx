import { Button } from '@mantine/core';
import { useEffect } from 'react';
import { useFeed } from '../shell/feed-context.ts';
import { progressText } from '../shell/progress-text.ts';
import { useNumbers } from '../shell/use-formats.ts';
import { selectDoor, selectLookOnly } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { selectHeavy, selectOwnRun, useTuning } from '../store/tuning-store.ts';
import { en } from '../text/en.ts';
import styles from './tuning.module.css';

const text = en.jobs;

/** Pause between two questions whether somebody's job still runs [ms]. */
const againMs = 2000;

/** Says that a long job runs for this site which this page did not begin, and lets whoever may ask end it. */
export function HeavyNote({ site }: { readonly site: string }) {
  const feed = useFeed();
  const numbers = useNumbers();
  const open = useLive(selectDoor) === 'open';
  const lookOnly = useLive(selectLookOnly);
  const own = useTuning(selectOwnRun(site));
  const heavy = useTuning(selectHeavy(site));
  useEffect(() => {
    if (!open || own !== undefined) return;
    void feed.loadHeavy(site);
    const asking = setInterval(() => void feed.loadHeavy(site), againMs);
    return () => clearInterval(asking);
  }, [feed, site, open, own]);
  const shown = own === undefined ? heavy : null;
  return (
    <div role="status">
      {shown === null ? null : (
        <div className={styles['row']}>
          <p>{text.elsewhere(shown.method, progressText(shown.progress, numbers))}</p>
          {lookOnly ? null : (
            <Button variant="default" size="compact-sm" onClick={() => void feed.endHeavy(site, shown.job)}>
              {text.end}
            </Button>
          )}
        </div>
      )}
    </div>
  );
}
