import type { LogEvent } from '../../../shared-types/log.ts';
import { en } from '../text/en.ts';
import { markedKinds, markShapes, marksOf } from './marks.ts';
import styles from './values-line.module.css';

/** What the shapes over the curves mean, as far as there are any. */
export function MarkKey({ events }: { readonly events: readonly LogEvent[] }) {
  const marks = marksOf(events);
  const present = markedKinds.filter((kind) => marks.some((mark) => mark.kind === kind));
  if (present.length === 0) return null;
  return (
    <ul className={styles['key']}>
      {present.map((kind) => (
        <li key={kind}>
          <span aria-hidden="true">{markShapes[kind]}</span> {en.events[kind]}
        </li>
      ))}
    </ul>
  );
}
