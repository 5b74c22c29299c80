import type { ReadingView } from '../reading-view.ts';
import styles from './drawing.module.css';
import type { Place } from './label-places.ts';

interface Props {
  readonly view: Pick<ReadingView, 'title' | 'value' | 'look'>;
  readonly at: Place;
}

/** Two lines of text with a halo, so that they stay legible across whatever they stand on. */
export function Label({ view, at }: Props) {
  return (
    <text x={at.x} y={at.y} textAnchor={at.anchor} className={styles['label']}>
      <tspan className={styles['title']}>{view.title}</tspan>
      <tspan x={at.x} dy="17" className={`${styles['value']} ${styles[view.look]}`}>
        {view.value}
      </tspan>
    </text>
  );
}
