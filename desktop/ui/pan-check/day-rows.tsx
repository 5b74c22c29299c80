import type { PanCheck } from '../../../shared-types/pan-check.ts';
import blocks from '../replay/blocks.module.css';
import { BandValue } from '../replay/other/band-value.tsx';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { dayRows } from './pan-rows.ts';
import styles from './tables-card.module.css';

const text = en.panCheck.table;

/** Every day of use, folded: the chart above shows the same. */
export function DayRows({ check }: { readonly check: PanCheck }) {
  const rows = dayRows(check, useNumbers());
  const times = useTimes();
  return (
    <details className={styles['details']}>
      <summary>{text.days(rows.length)}</summary>
      <table className={`ruled ${styles['table']} ${blocks['blocks']}`}>
        <thead>
          <tr>
            <th scope="col">{text.day}</th>
            <th scope="col">{text.hours}</th>
            <th scope="col">{text.measured}</th>
            <th scope="col">{text.expected}</th>
            <th scope="col">{text.ratio}</th>
          </tr>
        </thead>
        <tbody className="number">
          {rows.map(({ day, reference, hours, measured, expected, ratio }) => (
            <tr key={day}>
              <th scope="row">
                {times.day(day)}
                {reference ? <span className={styles['soft']}>{text.reference}</span> : null}
              </th>
              <td data-side={text.hours}>{hours}</td>
              <td data-side={text.measured}>{measured}</td>
              <td data-side={text.expected}>{expected}</td>
              <td data-side={text.ratio}>
                <BandValue shown={ratio} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
