import type { ReactNode } from 'react';
import type { Asked } from '../store/request-store.ts';
import styles from './outcome.module.css';

interface Props {
  readonly good: boolean;
  /** State in one word, for whoever looks for it in the page. */
  readonly state?: string;
  readonly children: ReactNode;
}

/** What came of something that was asked; the region stands there before it, so that it is read out. */
export function Outcome({ good, state, children }: Props) {
  return (
    <p role="status" className={`${styles['outcome']} ${good ? '' : styles['bad']}`} data-state={state}>
      {children}
    </p>
  );
}

/** False once a request was refused, or nobody answered. */
export function goesWell(asked: Asked): boolean {
  return (
    asked.state === 'none' ||
    asked.state === 'asking' ||
    (asked.state === 'answered' && asked.answer.accepted)
  );
}
