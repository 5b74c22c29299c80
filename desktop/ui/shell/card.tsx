import { type ReactNode, useId } from 'react';
import styles from './card.module.css';

interface Props {
  readonly heading: string;
  /** Stands at the right of the heading. */
  readonly aside?: ReactNode;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** A section of a screen with its heading. */
export function Card({ heading, aside, className, children }: Props) {
  const id = useId();
  return (
    <section aria-labelledby={id} className={`${styles['card']} ${className ?? ''}`}>
      <div className={styles['head']}>
        <h2 id={id}>{heading}</h2>
        {aside}
      </div>
      {children}
    </section>
  );
}
