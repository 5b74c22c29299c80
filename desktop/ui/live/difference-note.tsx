import styles from './loop-card.module.css';
import { useDifferences } from './use-differences.ts';

/** Says below the drawing where pump or drain do not follow. */
export function DifferenceNote() {
  return (
    <div role="status">
      {useDifferences().map((sentence) => (
        <p key={sentence} className={styles['differs']}>
          {sentence}
        </p>
      ))}
    </div>
  );
}
