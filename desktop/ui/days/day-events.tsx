import type { LogEvent } from '../../../shared-types/log.ts';
import { useSentence, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './day-tables.module.css';

/** What happened on a day. Changes of phase have a table of their own. */
export function DayEvents({ events }: { readonly events: readonly LogEvent[] }) {
  const times = useTimes();
  const inUnits = useSentence();
  const told = events.filter((event) => event.kind !== 'phase-changed');
  if (told.length === 0) return <p className={styles['soft']}>{en.days.noEvents}</p>;
  return (
    <ul className={styles['events']}>
      {told.map((event) => (
        <li key={`${event.atMs} ${event.kind} ${event.text}`}>
          <time className="number" dateTime={new Date(event.atMs).toISOString()}>
            {times.clock(event.atMs)}
          </time>
          <span>
            <strong>{en.events[event.kind]}</strong> {inUnits(event.text)}
          </span>
        </li>
      ))}
    </ul>
  );
}
