import { useEffect } from 'react';
import type { LogEvent } from '../../../../shared-types/log.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { useTimes } from '../../shell/use-formats.ts';
import { selectCommissioningEvents, useHistory } from '../../store/history-store.ts';
import { selectDecision, selectDoor } from '../../store/live-selectors.ts';
import { type LiveState, useLive } from '../../store/live-store.ts';
import { readyValue } from '../../store/loaded.ts';
import { en } from '../../text/en.ts';
import styles from './commissioning.module.css';
import { countResults } from './commissioning-view.ts';

const text = en.commissioning;

const selectStep = (state: LiveState) => selectDecision(state)?.commissioning?.step;

interface Props {
  readonly site: string;
  /** True when the controller itself knows a run. */
  readonly known: boolean;
}

/** The runs that the log tells of, the newest first. */
export function EarlierRuns({ site, known }: Props) {
  const feed = useFeed();
  const door = useLive(selectDoor);
  const step = useLive(selectStep);
  const runs = readyValue(useHistory(selectCommissioningEvents(site)));
  // biome-ignore lint/correctness/useExhaustiveDependencies: a run that ends is a reason to ask again
  useEffect(() => {
    if (door === 'open') void feed.loadCommissioningEvents(site);
  }, [feed, door, site, step]);
  if (runs === undefined) return null;
  if (runs.length === 0) return known ? null : <p className={styles['soft']}>{text.never}</p>;
  return (
    <section className={styles['findings']}>
      <h3>{text.earlier}</h3>
      <ul>
        {runs.map((run) => (
          <Run key={run.atMs} run={run} />
        ))}
      </ul>
    </section>
  );
}

function Run({ run }: { readonly run: LogEvent }) {
  const times = useTimes();
  const { passed, failed, byHand } = countResults(run);
  return (
    <li>
      <p>
        {times.instant(run.atMs)}: {en.events[run.kind]}
      </p>
      <p className={styles['soft']}>{text.counts(passed, failed, byHand)}</p>
    </li>
  );
}
