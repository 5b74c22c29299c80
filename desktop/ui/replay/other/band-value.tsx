import styles from './band-value.module.css';
import type { ShownValue } from './side-rows.ts';

/** A value, its band in words, and the same as a bar on the scale that it shares with others. */
export function BandValue({ shown: { value, band, bar } }: { readonly shown: ShownValue }) {
  return (
    <span className={styles['value']}>
      {value}
      {band === null ? null : <span className={styles['band']}>{band}</span>}
      {bar === null ? null : (
        <span className={styles['track']} aria-hidden="true">
          <span
            className={styles['bar']}
            style={{ left: `${bar.start * 100}%`, width: `${bar.length * 100}%` }}
          />
          <span className={styles['mark']} style={{ left: `${bar.mark * 100}%` }} />
        </span>
      )}
    </span>
  );
}
