import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import { draftSettings } from '../../setpoints/draft.ts';
import { FaultList } from '../../setpoints/fault-list.tsx';
import type { FormPart } from '../../setpoints/form-part.ts';
import { Card } from '../../shell/card.tsx';
import { useFeed } from '../../shell/feed-context.ts';
import { JobLine } from '../../shell/job-line.tsx';
import type { ComparisonRun } from '../../store/tuning-store.ts';
import { en } from '../../text/en.ts';
import styles from '../tuning.module.css';
import { TrialFields } from './trial-fields.tsx';

const text = en.tuning.other;

interface Props {
  readonly part: FormPart;
  /** False when no controller has told its settings. */
  readonly heard: boolean;
  readonly day: string;
  readonly run: ComparisonRun | null;
}

/** Which setpoints are to be tried, and the button that lives the day with them. */
export function TrialCard({ part, heard, day, run }: Props) {
  const feed = useFeed();
  const [best, setBest] = useState(false);
  const { site, draft, faults } = part;
  const running = run?.outcome.state === 'running';
  return (
    <Card heading={text.change}>
      <p className={styles['soft']}>{heard ? text.shared : text.unheard}</p>
      <TrialFields {...part} />
      <FaultList faults={faults} />
      <div className={`${styles['row']} ${styles['middle']}`}>
        <Button
          disabled={running || faults.length > 0}
          onClick={() => void feed.compareDay(site, day, draftSettings(draft), best)}
        >
          {text.run}
        </Button>
        <Checkbox
          label={text.best}
          checked={best}
          onChange={(event) => setBest(event.currentTarget.checked)}
        />
      </div>
      {faults.length === 0 ? null : <p className={styles['soft']}>{text.mend}</p>}
      <JobLine outcome={run?.outcome} onCancel={() => feed.cancelComparison()} />
    </Card>
  );
}
