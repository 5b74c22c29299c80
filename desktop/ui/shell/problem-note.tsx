import { Button } from '@mantine/core';
import type { Problem } from '../../../shared-types/monitor-api.ts';
import { en } from '../text/en.ts';
import styles from './problem-note.module.css';

/** Shape and word say the severity as well as the colour does. */
const marks = { note: 'i', warning: '!', error: '×' } as const satisfies Record<Problem['severity'], string>;

/** A problem in words, with what to do about it. */
export function ProblemNote({
  problem,
  onAgain,
}: {
  readonly problem: Problem;
  readonly onAgain?: () => void;
}) {
  const { severity, text, tip } = problem;
  return (
    <div className={`${styles['note']} ${styles[severity]}`}>
      <span className={styles['mark']} aria-hidden="true">
        {marks[severity]}
      </span>
      <div className={styles['words']}>
        <p>
          <strong className="visually-hidden">{en.shell.severities[severity]}: </strong>
          {text}
        </p>
        {tip === undefined ? null : <p className={styles['tip']}>{tip}</p>}
      </div>
      {onAgain === undefined ? null : (
        <Button variant="default" size="xs" onClick={onAgain}>
          {en.shell.again}
        </Button>
      )}
    </div>
  );
}
