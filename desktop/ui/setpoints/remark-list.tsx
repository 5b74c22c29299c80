import { useDebouncedValue } from '@mantine/hooks';
import { useEffect } from 'react';
import { useFeed } from '../shell/feed-context.ts';
import { useSentence } from '../shell/use-formats.ts';
import { selectRemarks, useSettings } from '../store/settings-store.ts';
import { en } from '../text/en.ts';
import { draftSettings } from './draft.ts';
import type { FormPart } from './form-part.ts';
import styles from './setpoints.module.css';

/** How long nobody may type before the host is asked [ms]. A design choice. */
const pauseMs = 400;

/** What the changes bring up that is allowed and yet has a drawback. */
export function RemarkList({ site, draft, faults }: FormPart) {
  const feed = useFeed();
  const inUnits = useSentence();
  const remarks = useSettings(selectRemarks);
  const wanted = faults.length === 0 ? JSON.stringify(draftSettings(draft)) : '';
  const [asked] = useDebouncedValue(wanted, pauseMs);
  useEffect(() => {
    if (asked !== '') void feed.askRemarks(site, JSON.parse(asked));
  }, [feed, site, asked]);
  const fits = remarks !== null && JSON.stringify(remarks.settings) === wanted;
  const news = fits ? remarks.list.filter(({ isNew }) => isNew) : [];
  return (
    <div role="status">
      {news.length === 0 ? null : (
        <div className={styles['remarks']}>
          <p>{en.setpoints.changes.remarks}</p>
          <ul>
            {news.map(({ text }) => (
              <li key={text}>{inUnits(text)}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
