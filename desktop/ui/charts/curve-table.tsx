import { useState } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { seriesText } from '../format/series-value.ts';
import { durationText } from '../format/times.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './curve-table.module.css';
import { type SeriesName, seriesTitle } from './series.ts';
import { tableRows, tableStepMs } from './table-rows.ts';

interface Props {
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
}

/** The curves as a table, for whoever reads better than looks. It is made when it is opened. */
export function CurveTable({ curves, names }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <details className={styles['details']} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{en.charts.table}</summary>
      {open ? <Table curves={curves} names={names} /> : null}
    </details>
  );
}

function Table({ curves, names }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const stepMs = tableStepMs((curves.atMs.at(-1) ?? 0) - (curves.atMs[0] ?? 0));
  return (
    // A table of many columns scrolls by itself, so that the page need not.
    <section className={styles['scroll']} aria-label={en.charts.table} tabIndex={-1}>
      <table className={styles['table']}>
        <caption>{en.charts.tableCaption(durationText(stepMs))}</caption>
        <thead>
          <tr>
            <th scope="col">{en.charts.time}</th>
            {names.map((name) => (
              <th key={name} scope="col">
                {seriesTitle(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody className="number">
          {tableRows(curves, names, stepMs).map((row) => (
            <tr key={row.atMs}>
              <th scope="row">{times.clock(row.atMs)}</th>
              {names.map((name, index) => {
                const value = row.values[index] ?? null;
                return (
                  <td key={name}>{value === null ? en.charts.noValue : seriesText(name, value, numbers)}</td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
