import type { ReactNode } from 'react';
import type { Loaded } from '../store/loaded.ts';
import { en } from '../text/en.ts';
import styles from './loaded-view.module.css';
import { ProblemNote } from './problem-note.tsx';

interface Props<Value> {
  readonly loaded: Loaded<Value> | undefined;
  readonly onAgain: () => void;
  readonly waiting?: string;
  readonly children: (value: Value) => ReactNode;
}

/** What was fetched, or that it is on its way, or why it cannot be had. */
export function LoadedView<Value>({ loaded, onAgain, waiting = en.shell.loading, children }: Props<Value>) {
  if (loaded === undefined || loaded.state === 'loading')
    return (
      <p className={styles['waiting']} role="status">
        {waiting}
      </p>
    );
  if (loaded.state === 'failed') return <ProblemNote problem={loaded.problem} onAgain={onAgain} />;
  return children(loaded.value);
}
