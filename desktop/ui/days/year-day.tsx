import { memo } from 'react';
import { useAddress } from '../shell/use-address.ts';
import { en } from '../text/en.ts';
import { type CalendarCell, heatOf } from './calendar.ts';
import { hasGap } from './day-remarks.ts';
import { useDayWords } from './use-day-words.ts';
import type { HeatShades } from './use-heat-shades.ts';
import { useToday } from './use-today.ts';
import styles from './year-calendar.module.css';

const { marks } = en.days.year;

interface Props {
  readonly cell: CalendarCell;
  readonly shades: HeatShades;
  /** True for the one day that Tab stops at. */
  readonly stop: boolean;
  readonly onLook: (day: string) => void;
}

/** A day of the year: its number on the shade of its heat, with its marks. */
export const YearDay = memo(function YearDay({ cell, shades, stop, onLook }: Props) {
  const { day, dayOfMonth, summary, missing } = cell;
  const address = useAddress();
  const wordsOf = useDayWords();
  const today = useToday();
  if (summary === undefined)
    return (
      <span className={`${styles['cell']} ${missing ? styles['missing'] : styles['outside']}`}>
        {dayOfMonth}
        {missing ? <span className="visually-hidden"> {en.days.noLog}</span> : null}
      </span>
    );
  const gap = day !== today && hasGap(summary);
  return (
    <a
      href={address({ screen: 'days', day })}
      className={`${styles['cell']} ${styles['logged']}`}
      style={shades.of(heatOf(summary))}
      aria-label={wordsOf(summary)}
      data-day={day}
      tabIndex={stop ? 0 : -1}
      onFocus={() => onLook(day)}
      onMouseEnter={() => onLook(day)}
    >
      {dayOfMonth}
      <span className={styles['marks']}>
        {summary.alarms ? marks.alarm : null}
        {summary.imported ? marks.imported : null}
        {gap ? marks.gap : null}
      </span>
    </a>
  );
});
