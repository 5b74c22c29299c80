import { en } from '../../text/en.ts';
import { MarkShape } from './mark-shape.tsx';
import styles from './trade-off-chart.module.css';

const text = en.tuning.many.marks;
const none = { front: false, inForce: false, advised: false, chosen: false };

/** What each shape of the trade-off means. */
const shapes = [
  { title: text.inForce, shape: { ...none, inForce: true } },
  { title: text.front, shape: { ...none, front: true } },
  { title: text.other, shape: none },
  { title: text.advised, shape: { ...none, front: true, advised: true } },
  { title: text.chosen, shape: { ...none, front: true, chosen: true } },
];

export function MarkLegend() {
  return (
    <ul className={styles['legend']}>
      {shapes.map(({ title, shape }) => (
        <li key={title}>
          <svg viewBox="-22 -14 36 28" aria-hidden="true" className={styles['sample']}>
            <MarkShape {...shape} />
          </svg>
          {title}
        </li>
      ))}
    </ul>
  );
}
