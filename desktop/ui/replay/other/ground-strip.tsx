import type { Comparison } from '../../../../shared-types/tuning.ts';
import type { TimeWindow } from '../../charts/chart-look.ts';
import { en } from '../../text/en.ts';
import { spanPieces } from './span-pieces.ts';
import styles from './two-curves.module.css';

interface Props {
  readonly spans: Comparison['leftGround'];
  readonly window: TimeWindow;
}

/** Marks on the time axis where the log cannot vouch; a list says the same in words. */
export function GroundStrip({ spans, window }: Props) {
  if (spans.length === 0) return null;
  return (
    <div aria-hidden="true">
      <div className={styles['strip']}>
        {spanPieces(spans, window).map(({ start, length }) => (
          <span
            key={`${start} ${length}`}
            className={styles['piece']}
            style={{ left: `${start * 100}%`, width: `${length * 100}%` }}
          />
        ))}
      </div>
      <p className={styles['stripKey']}>
        <span className={styles['piece']} />
        {en.tuning.other.ground}
      </p>
    </div>
  );
}
