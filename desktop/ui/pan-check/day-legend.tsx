import type { ReactNode } from 'react';
import { en } from '../text/en.ts';
import styles from './chart.module.css';
import { DayMark } from './day-mark.tsx';

const text = en.panCheck.byDay.legend;

/** What each shape of the days' chart means. */
export function DayLegend() {
  return (
    <ul className={styles['legend']}>
      {[false, true].map((reference) => (
        <Sample key={String(reference)} meaning={reference ? text.reference : text.day}>
          <path className={styles['band']} d="M14 2V20" />
          <DayMark x={14} y={11} size={7} reference={reference} />
        </Sample>
      ))}
      <Sample meaning={text.group}>
        <rect className={styles['group']} x={1} y={5} width={26} height={12} />
        <path className={styles['middle']} d="M1 11H27" />
      </Sample>
      <Sample meaning={text.one}>
        <path className={styles['one']} d="M1 11H27" />
      </Sample>
    </ul>
  );
}

function Sample({ meaning, children }: { readonly meaning: string; readonly children: ReactNode }) {
  return (
    <li>
      <svg viewBox="0 0 28 22" aria-hidden="true" className={styles['sample']}>
        {children}
      </svg>
      {meaning}
    </li>
  );
}
