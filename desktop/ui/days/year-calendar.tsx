import { Button } from '@mantine/core';
import { useMemo, useState } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import { inLine } from '../format/numbers.ts';
import { useAddress } from '../shell/use-address.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { heatOf } from './calendar.ts';
import { HeatLegend } from './heat-legend.tsx';
import { useHeatShades } from './use-heat-shades.ts';
import { calendarYear, yearsOf } from './year.ts';
import styles from './year-calendar.module.css';
import { YearGrid } from './year-grid.tsx';

const text = en.days.year;

/** A year at a glance: the heat of each day as a shade, what was odd as a mark, all of it in words as well. */
export function YearCalendar({ days }: { readonly days: readonly DaySummary[] }) {
  const years = useMemo(() => yearsOf(days), [days]);
  const [chosen, setChosen] = useState(years.at(-1) ?? '');
  const index = Math.max(0, years.indexOf(chosen));
  const year = useMemo(() => calendarYear(years[index] ?? '', days), [years, index, days]);
  const shades = useHeatShades(days);
  const go = (step: number) => () => setChosen(years[index + step] ?? chosen);
  return (
    <section className={styles['year']} aria-label={text.heading(year.year)}>
      <div className={styles['head']}>
        <Button variant="default" disabled={index === 0} onClick={go(-1)}>
          <span aria-hidden="true">←</span>
          <span className="visually-hidden">{text.earlier}</span>
        </Button>
        <div aria-live="polite">
          <h2>{year.year}</h2>
          <YearTotals year={year} />
        </div>
        <Button variant="default" disabled={index >= years.length - 1} onClick={go(1)}>
          <span aria-hidden="true">→</span>
          <span className="visually-hidden">{text.later}</span>
        </Button>
      </div>
      <YearGrid key={year.year} year={year} shades={shades} />
      <HeatLegend shades={shades} imported={days.some((day) => day.imported)} />
    </section>
  );
}

function YearTotals({
  year: { heatHomeJ, loggedDays, best },
}: {
  readonly year: ReturnType<typeof calendarYear>;
}) {
  const numbers = useNumbers();
  const times = useTimes();
  const address = useAddress();
  return (
    <>
      <p>{en.days.monthTotal(inLine(numbers.heat(heatHomeJ)), loggedDays)}</p>
      {best === undefined ? null : (
        <p>
          <a href={address({ screen: 'days', day: best.day })}>
            {text.best(times.shortDay(best.day), inLine(numbers.heat(heatOf(best))))}
          </a>
        </p>
      )}
    </>
  );
}
