import type { ReactNode } from 'react';
import styles from './state-word.module.css';

interface Props {
  readonly good: boolean;
  readonly children: ReactNode;
}

/** A state in words with a tick or a cross before it; only what is not in order has a colour. */
export function StateWord({ good, children }: Props) {
  return (
    <span className={good ? styles['good'] : styles['bad']}>
      <span aria-hidden="true" className={styles['sign']}>
        {good ? '✓' : '×'}
      </span>{' '}
      {children}
    </span>
  );
}
