import type { ReactNode } from 'react';
import type { PhaseSpan } from '../../../shared-types/log.ts';
import { useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import type { TimeWindow } from './chart-look.ts';
import styles from './phase-ribbon.module.css';
import { ribbonPieces } from './ribbon-pieces.ts';

interface Props {
  readonly phases: readonly PhaseSpan[];
  readonly window: TimeWindow;
}

/**
 * The phases under the curves, on the same time axis. They differ in height and hatching, not in
 * colour alone; the table of phases says the same in words, so that a screen reader skips the ribbon.
 */
export function PhaseRibbon({ phases, window }: Props) {
  const times = useTimes();
  return (
    <div className={styles['ribbon']} aria-hidden="true">
      {ribbonPieces(phases, window).map(({ span, start, length }) => (
        <span
          key={span.fromMs}
          className={`${styles['piece']} ${styles[span.phase]}`}
          style={{ left: `${start * 100}%`, width: `${length * 100}%` }}
          title={`${en.phases[span.phase]}, ${times.clock(span.fromMs)} – ${times.clock(span.toMs)}: ${en.reasons[span.reason]}`}
        >
          <span className={styles['name']}>{en.phases[span.phase]}</span>
        </span>
      ))}
    </div>
  );
}

interface KeyProps {
  readonly phases: readonly PhaseSpan[];
  /** What else is to be explained there, as items of the list. */
  readonly children?: ReactNode;
}

/** What each look of the ribbon means. */
export function RibbonKey({ phases, children }: KeyProps) {
  const present = [...new Set(phases.map((span) => span.phase))];
  return (
    <ul className={styles['key']}>
      {present.map((phase) => (
        <li key={phase}>
          <span className={styles['sample']} aria-hidden="true">
            <span className={`${styles['piece']} ${styles[phase]}`} />
          </span>
          {en.phases[phase]}
        </li>
      ))}
      {children}
    </ul>
  );
}
