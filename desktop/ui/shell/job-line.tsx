import { Button } from '@mantine/core';
import type { MonitorMethod, MonitorResult } from '../../../shared-types/monitor-api.ts';
import type { JobOutcome } from '../store/job-slot.ts';
import { en } from '../text/en.ts';
import styles from './job-line.module.css';
import { ProblemNote } from './problem-note.tsx';
import { doneOf, progressText } from './progress-text.ts';
import { useNumbers } from './use-formats.ts';

const text = en.jobs;

interface Props {
  readonly outcome: JobOutcome<MonitorResult<MonitorMethod>> | undefined;
  readonly onCancel: () => void;
}

/** How far a long question is and the way to give it up, or why it failed; the region is there before it. */
export function JobLine({ outcome, onCancel }: Props) {
  const numbers = useNumbers();
  const progress = outcome?.state === 'running' ? outcome.progress : undefined;
  const done = progress === undefined ? undefined : doneOf(progress);
  return (
    <div className={styles['line']}>
      <p role="status">{progress === undefined ? '' : progressText(progress, numbers)}</p>
      {progress === undefined ? null : (
        <>
          {done === undefined ? null : (
            <span className={styles['track']} aria-hidden="true">
              <span className={styles['done']} style={{ width: `${done * 100}%` }} />
            </span>
          )}
          <Button variant="default" size="compact-sm" onClick={onCancel}>
            {text.cancel}
          </Button>
        </>
      )}
      {outcome?.state === 'failed' ? <ProblemNote problem={outcome.problem} /> : null}
    </div>
  );
}
