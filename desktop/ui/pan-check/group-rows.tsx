import type { PanCheck } from '../../../shared-types/pan-check.ts';
import blocks from '../replay/blocks.module.css';
import { BandValue } from '../replay/other/band-value.tsx';
import type { ShownValue } from '../replay/other/side-rows.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { groupRows } from './pan-rows.ts';
import { spanText } from './span-text.ts';
import styles from './tables-card.module.css';

const text = en.panCheck.table;
const columns = ['ratio', 'efficiency', 'loss', 'contact'] as const;

/** What each group of days tells, the reference first. */
export function GroupRows({ check }: { readonly check: PanCheck }) {
  const rows = groupRows(check, useNumbers());
  const { shortDay } = useTimes();
  return (
    <table className={`ruled ${styles['table']} ${blocks['blocks']}`}>
      <caption>
        {en.tuning.band.meaning} {text.contactNote}
      </caption>
      <thead>
        <tr>
          <th scope="col">{text.group}</th>
          <th scope="col">{text.count}</th>
          <th scope="col">{text.hours}</th>
          {columns.map((name) => (
            <th key={name} scope="col">
              {text[name]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody className="number">
        {rows.map((row, index) => (
          <tr key={`${row.fromDay} ${row.toDay}`}>
            <th scope="row">
              {spanText(row.fromDay, row.toDay, shortDay)}
              {index === 0 ? <span className={styles['soft']}>{text.reference}</span> : null}
            </th>
            <td data-side={text.count}>{row.count}</td>
            <td data-side={text.hours}>{row.hours}</td>
            {columns.map((name) => (
              <td key={name} data-side={text[name]}>
                <Told shown={row[name]} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Told({ shown }: { readonly shown: ShownValue | null }) {
  if (shown !== null) return <BandValue shown={shown} />;
  return <span className={styles['none']}>{text.notTold}</span>;
}
