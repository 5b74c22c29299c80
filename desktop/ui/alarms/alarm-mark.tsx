import type { Alarm, AlarmPriority, AlarmState } from '../../../shared-types/alarms.ts';
import styles from './alarm-mark.module.css';

/** The shape says how soon, whatever the colour: a triangle, a diamond, a circle. */
const shapes: Readonly<Record<AlarmPriority, string>> = {
  urgent: 'M12 3 22 21H2Z',
  soon: 'M12 2 22 12 12 22 2 12Z',
  'when-convenient': 'M12 3a9 9 0 1 1 0 18a9 9 0 1 1 0-18Z',
};

/** What is drawn inside it: a bang for what is new, a tick for what was seen, bars for what was put aside. */
const signs: Readonly<Record<AlarmState, string>> = {
  unacknowledged: 'M12 9v5M12 17v.5',
  acknowledged: 'M8.5 13.5l2.5 2.5 4.5-5',
  'returned-unacknowledged': '',
  shelved: 'M10 11v5M14 11v5',
  suppressed: 'M12 14v.5',
};

/** Priority and state of an alarm as a shape; the words stand beside it. */
export function AlarmMark({ alarm: { priority, state, active } }: { readonly alarm: Alarm }) {
  const tone = active && state !== 'shelved' ? styles[priority] : '';
  return (
    <svg
      className={`${styles['mark']} ${tone}`}
      data-state={state}
      width="26"
      height="26"
      viewBox="0 0 24 24"
      aria-hidden="true"
      focusable="false"
    >
      <path className={styles['shape']} d={shapes[priority]} />
      <path className={styles['sign']} d={signs[state]} />
    </svg>
  );
}
