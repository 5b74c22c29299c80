import { Button } from '@mantine/core';
import { useState } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import { inLine } from '../format/numbers.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './calendar.module.css';
import { calendarMonth, monthAfter, monthOf } from './calendar.ts';
import { CalendarDay } from './calendar-day.tsx';

const text = en.days;

/** A month of days, each with a bar for its heat. */
export function Calendar({ days }: { readonly days: readonly DaySummary[] }) {
  const months = days.map((summary) => monthOf(summary.day)).sort();
  const first = months[0] ?? '';
  const last = months.at(-1) ?? '';
  const [month, setMonth] = useState(last);
  const times = useTimes();
  const numbers = useNumbers();
  const { weeks, heatHomeJ, loggedDays } = calendarMonth(month, days);
  return (
    <section className={styles['calendar']} aria-label={times.month(month)}>
      <div className={styles['head']}>
        <Button variant="default" disabled={month <= first} onClick={() => setMonth(monthAfter(month, -1))}>
          <span aria-hidden="true">←</span>
          <span className="visually-hidden">{text.earlier}</span>
        </Button>
        <div className={styles['month']} aria-live="polite">
          <h2>{times.month(month)}</h2>
          <p>{text.monthTotal(inLine(numbers.heat(heatHomeJ)), loggedDays)}</p>
        </div>
        <Button variant="default" disabled={month >= last} onClick={() => setMonth(monthAfter(month, 1))}>
          <span aria-hidden="true">→</span>
          <span className="visually-hidden">{text.later}</span>
        </Button>
      </div>
      <table className={styles['table']}>
        <thead>
          <tr>
            {times.weekdays().map(({ short, long }) => (
              <th key={long} scope="col">
                <abbr title={long}>{short}</abbr>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {weeks.map((week) => (
            <tr key={week.find((cell) => cell !== null)?.day}>
              {week.map((cell, index) => (
                <td key={cell?.day ?? `none-${index}`}>
                  {cell === null ? null : <CalendarDay cell={cell} />}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
