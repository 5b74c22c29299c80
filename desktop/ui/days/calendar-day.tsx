import { useAddress } from '../shell/use-address.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './calendar.module.css';
import type { CalendarCell } from './calendar.ts';
import { dayRemarks } from './day-remarks.ts';
import { useToday } from './use-today.ts';

const text = en.days;

/** A day of the calendar: its heat as a number and as a bar, and what was odd about it. */
export function CalendarDay({ cell }: { readonly cell: CalendarCell }) {
  const today = useToday();
  const address = useAddress();
  const times = useTimes();
  const numbers = useNumbers();
  const { day, dayOfMonth, summary, bar } = cell;
  if (summary === undefined) return <DayWithoutLog cell={cell} />;
  const heat = summary.heatHomeJ === null ? undefined : numbers.heat(summary.heatHomeJ);
  const remarks = dayRemarks(summary, day === today, numbers);
  return (
    <a href={address({ screen: 'days', day })} className={styles['day']}>
      <span className="visually-hidden">{times.day(day)}:</span>
      <span className={styles['date']} aria-hidden="true">
        {dayOfMonth}
      </span>
      {heat === undefined ? (
        <span className="visually-hidden">{text.heatUntold}</span>
      ) : (
        <span className={`${styles['heat']} number`}>
          {heat.number} <span className={styles['unit']}>{heat.unit}</span>
          <span className="visually-hidden"> {text.home}</span>
        </span>
      )}
      <span className={styles['remarks']}>
        {remarks.map((remark) => (
          <span key={remark.kind} className={styles[remark.kind]}>
            {remark.brief === undefined ? (
              remark.text
            ) : (
              <>
                <span className={styles['long']}>{remark.text}</span>
                <span className={styles['brief']} aria-hidden="true">
                  {remark.brief}
                </span>
              </>
            )}
          </span>
        ))}
      </span>
      <span className={styles['track']}>
        <span className={styles['bar']} style={{ width: `${bar * 100}%` }} />
      </span>
    </a>
  );
}

/** A day before or after the log stays quiet; one that is missing from it says so. */
function DayWithoutLog({ cell: { dayOfMonth, missing } }: { readonly cell: CalendarCell }) {
  return (
    <span className={`${styles['none']} ${missing ? '' : styles['outside']}`}>
      <span className={styles['date']}>{dayOfMonth}</span>
      {missing ? <span className={styles['missing']}>{text.noLog}</span> : null}
    </span>
  );
}
