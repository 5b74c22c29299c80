import { useEffect } from 'react';
import type { DaySummary } from '../../../../shared-types/log.ts';
import type { LoopFit } from '../../../../shared-types/tuning.ts';
import { Card } from '../../shell/card.tsx';
import { useFeed } from '../../shell/feed-context.ts';
import { LoadedView } from '../../shell/loaded-view.tsx';
import { useSentence, useTimes } from '../../shell/use-formats.ts';
import { selectDoor } from '../../store/live-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import { selectFit, selectKeptFit, useTuning } from '../../store/tuning-store.ts';
import { en } from '../../text/en.ts';
import styles from '../tuning.module.css';
import details from './fit-details.module.css';
import { FitDetails } from './fit-details.tsx';
import { FitRunner } from './fit-runner.tsx';
import { inTitles } from './fit-words.ts';

const text = en.tuning.fit;

interface Props {
  readonly site: string;
  readonly days: readonly DaySummary[];
}

/** Whether the simulated loop was fitted to this one, what is known of it, and a way to fit it. */
export function FitCard({ site, days }: Props) {
  const feed = useFeed();
  const open = useLive(selectDoor) === 'open';
  const kept = useTuning(selectKeptFit(site));
  const run = useTuning(selectFit(site));
  useEffect(() => {
    if (open) void feed.loadKeptFit(site);
  }, [feed, site, open]);
  const failed = run?.outcome.state === 'ready' && !run.outcome.result.converged ? run.outcome.result : null;
  return (
    <Card heading={text.heading}>
      <div className={styles['stack']}>
        <LoadedView loaded={kept} onAgain={() => void feed.loadKeptFit(site)}>
          {(fit) => (fit === null ? <p>{text.none}</p> : <Kept fit={fit} />)}
        </LoadedView>
        {failed === null ? null : (
          <div role="status">
            <p className={styles['old']}>{text.failed}</p>
            <Verdicts fit={failed} />
          </div>
        )}
        <FitRunner site={site} days={days} />
      </div>
    </Card>
  );
}

function Kept({ fit }: { readonly fit: LoopFit }) {
  const times = useTimes();
  const sorted = [...fit.days].sort();
  const [first = '', last = ''] = [sorted[0], sorted.at(-1)];
  return (
    <>
      <p>{text.kept(sorted.length, times.day(first), times.day(last))}</p>
      {fit.converged ? <Told fit={fit} /> : <Verdicts fit={fit} />}
      {fit.converged ? <FitDetails fit={fit} /> : <p className={styles['old']}>{text.failed}</p>}
    </>
  );
}

/** Kept folded: who wants to know how well the loop is known looks at the fitted values first. */
function Told({ fit }: { readonly fit: LoopFit }) {
  return (
    <details className={details['details']}>
      <summary>{text.told(fit.verdicts.length)}</summary>
      <Verdicts fit={fit} />
    </details>
  );
}

function Verdicts({ fit }: { readonly fit: LoopFit }) {
  const inUnits = useSentence();
  return (
    <ul className={styles['lines']} aria-label={text.verdicts}>
      {fit.verdicts.map((verdict) => (
        <li key={verdict}>{inUnits(inTitles(verdict))}</li>
      ))}
    </ul>
  );
}
