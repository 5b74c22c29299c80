import { useShallow } from 'zustand/react/shallow';
import { useLive } from '../store/live-store.ts';
import styles from './banner-list.module.css';
import { bannersOf } from './banners.ts';
import { ProblemNote } from './problem-note.tsx';

/** Texts of the banners; as long as they stay the same, nothing is drawn or read out again. */
export function BannerList() {
  const lines = useLive(useShallow((state) => bannersOf(state).map((problem) => JSON.stringify(problem))));
  return (
    <div role="status" className={styles['list']}>
      {lines.map((line) => (
        <ProblemNote key={line} problem={JSON.parse(line)} />
      ))}
    </div>
  );
}
