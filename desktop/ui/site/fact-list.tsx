import type { ReactNode } from 'react';
import styles from './fact-list.module.css';

/** A fact: its name, and what is so. */
export type Fact = readonly [title: string, value: ReactNode];

/** Facts one below the other. */
export function FactList({ facts }: { readonly facts: readonly Fact[] }) {
  return (
    <dl>
      {facts.map(([title, value]) => (
        <div key={title} className={styles['row']}>
          <dt>{title}</dt>
          <dd className="number">{value}</dd>
        </div>
      ))}
    </dl>
  );
}
