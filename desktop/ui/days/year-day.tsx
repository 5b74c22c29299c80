import { memo } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import type { Route } from '../shell/route.ts';
import { en } from '../text/en.ts';
import { type CalendarCell, heatOf } from './calendar.ts';
import { hasGap } from './day-remarks.ts';
import type { HeatShades } from './use-heat-shades.ts';
import styles from './year-calendar.module.css';

const { marks } = en.days.year;

/** What each day of a year shows by; asked for once for all of them. */
export interface DayLook {
  readonly shades: HeatShades;
  readonly address: (route: Route) => string;
  readonly wordsOf: (summary: DaySummary) => string;
  readonly today: string | undefined;
  readonly onLook: (day: string) => void;
}

interface Props extends DayLook {
  readonly cell: CalendarCell;
  /** True for the one day that Tab stops at. */
  readonly stop: boolean;
}

/** A day of the year: its number on the shade of its heat, with its marks. */
export const YearDay = memo(function YearDay({ cell, stop, ...look }: Props) {
  const { day, dayOfMonth, summary, missing } = cell;
  const { shades, address, wordsOf, today, onLook } = look;
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
