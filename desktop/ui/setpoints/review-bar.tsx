import { Button } from '@mantine/core';
import type { RefObject } from 'react';
import { en } from '../text/en.ts';
import styles from './setpoints.module.css';

interface Props {
  readonly count: number;
  readonly target: RefObject<HTMLElement | null>;
}

/** On a small screen the way from a field to what is changed; wide ones show both beside each other. */
export function ReviewBar({ count, target }: Props) {
  if (count === 0) return null;
  return (
    <div className={styles['bar']}>
      <Button
        fullWidth
        onClick={() => {
          target.current?.focus({ preventScroll: true });
          target.current?.scrollIntoView({ block: 'start' });
        }}
      >
        {en.setpoints.changes.review(count)}
      </Button>
    </div>
  );
}
