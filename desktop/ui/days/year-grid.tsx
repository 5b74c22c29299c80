import { type KeyboardEvent, useRef, useState } from 'react';
import { inLine } from '../format/numbers.ts';
import { useAddress } from '../shell/use-address.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import type { CalendarMonth } from './calendar.ts';
import { useDayWords } from './use-day-words.ts';
import type { HeatShades } from './use-heat-shades.ts';
import { useToday } from './use-today.ts';
import { type CalendarYear, dayByKey } from './year.ts';
import styles from './year-calendar.module.css';
import { type DayLook, YearDay } from './year-day.tsx';

interface Props {
  readonly year: CalendarYear;
  readonly shades: HeatShades;
}

/**
 * Twelve months of days. Tab stops at one day of them, arrow keys go from day to day; what the day under
 * the focus or the pointer holds stands above in words.
 */
export function YearGrid({ year, shades }: Props) {
  const grid = useRef<HTMLDivElement>(null);
  const wordsOf = useDayWords();
  const address = useAddress();
  const today = useToday();
  const logged = year.months.flatMap(({ weeks }) => weeks.flat().flatMap((cell) => cell?.summary ?? []));
  const [looked, setLooked] = useState<string | undefined>(undefined);
  const stop = logged.find(({ day }) => day === looked)?.day ?? logged.at(-1)?.day;
  const told = logged.find(({ day }) => day === looked);
  const go = (event: KeyboardEvent) => {
    const days = logged.map(({ day }) => day);
    const from = (event.target as HTMLElement).dataset['day'];
    const next = from === undefined || event.shiftKey ? undefined : dayByKey(days, from, event.key);
    if (next === undefined) return;
    event.preventDefault();
    grid.current?.querySelector<HTMLElement>(`[data-day="${next}"]`)?.focus();
  };
  return (
    <>
      <p className={styles['told']}>{told === undefined ? en.days.year.pointer : wordsOf(told)}</p>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the days in it are links; keys only move among them */}
      <div ref={grid} className={styles['months']} onKeyDown={go}>
        {year.months.map((month) => (
          <Month
            key={month.month}
            month={month}
            stop={stop}
            look={{ shades, address, wordsOf, today, onLook: setLooked }}
          />
        ))}
      </div>
    </>
  );
}

interface MonthProps {
  readonly month: CalendarMonth;
  readonly stop: string | undefined;
  readonly look: DayLook;
}

function Month({ month, stop, look }: MonthProps) {
  const times = useTimes();
  const numbers = useNumbers();
  return (
    <div>
      <div className={styles['monthHead']}>
        <h3>{times.month(month.month)}</h3>
        <span className="number">
          {month.loggedDays === 0 ? null : inLine(numbers.heat(month.heatHomeJ))}
        </span>
      </div>
      <table className={styles['table']}>
        <thead className="visually-hidden">
          <tr>
            {times.weekdays().map(({ long }) => (
              <th key={long} scope="col">
                {long}
              </th>
            ))}
          </tr>
        </thead>
        <tbody className="number">
          {month.weeks.map((week) => (
            <tr key={week.find((cell) => cell !== null)?.day}>
              {week.map((cell, index) => (
                <td key={cell?.day ?? `none-${index}`}>
                  {cell === null ? null : <YearDay cell={cell} stop={cell.day === stop} {...look} />}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
