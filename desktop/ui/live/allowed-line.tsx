import { useCallback } from 'react';
import { useFeed } from '../shell/feed-context.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { selectAllowedHeat, useHistory } from '../store/history-store.ts';
import { selectClockSpeed, selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './allowed-line.module.css';
import { type AllowedWords, allowedWords } from './allowed-words.ts';
import { useRefresh } from './use-refresh.ts';

const text = en.live.today.allowed;
/** A minute changes little; beside a simulated loop a minute is long [ms]. */
const [refreshMs, fastRefreshMs] = [60_000, 10_000];

/** Today's heat beside what this weather allowed, or why that cannot be told. */
export function AllowedLine() {
  const site = useLive(selectSiteName) ?? '';
  const clockSpeed = useLive(selectClockSpeed);
  const feed = useFeed();
  const load = useCallback(() => feed.loadAllowedHeat(site), [feed, site]);
  useRefresh(load, clockSpeed > 1 ? fastRefreshMs : refreshMs);
  const loaded = useHistory(selectAllowedHeat(site));
  const numbers = useNumbers();
  const times = useTimes();
  if (loaded === undefined || loaded.state === 'loading') return null;
  if (loaded.state === 'failed') return <Words sentence={text.failed(loaded.problem.text)} />;
  return <Words {...allowedWords(loaded.value, numbers, times)} />;
}

function Words({ sentence, share }: AllowedWords) {
  return (
    <div className={styles['allowed']}>
      {share === undefined ? null : (
        <div className={styles['whole']} aria-hidden="true">
          <div className={styles['part']} style={{ width: `${100 * share}%` }} />
        </div>
      )}
      <p>{sentence}</p>
      {share === undefined ? null : <p className={styles['meaning']}>{text.meaning}</p>}
    </div>
  );
}
