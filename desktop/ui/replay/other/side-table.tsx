import type { Comparison } from '../../../../shared-types/tuning.ts';
import { useNumbers, useSentence } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import blocks from '../blocks.module.css';
import { BandValue } from './band-value.tsx';
import { type ShownValue, sideRows } from './side-rows.ts';
import styles from './side-table.module.css';

const text = en.tuning.other;

/** Log, simulated loop as set then, and under the tried setpoints beside each other, each with its band. */
export function SideTable({ comparison }: { readonly comparison: Comparison }) {
  const numbers = useNumbers();
  const inUnits = useSentence();
  return (
    <table className={`ruled ${styles['table']} ${blocks['blocks']}`}>
      <caption>{en.tuning.band.meaning}</caption>
      <thead>
        <tr>
          <th scope="col">{text.what}</th>
          <th scope="col">{text.logged}</th>
          <th scope="col">{text.base}</th>
          <th scope="col">{text.tried}</th>
          <th scope="col">{text.difference}</th>
        </tr>
      </thead>
      <tbody className="number">
        {sideRows(comparison, numbers).map(({ title, logged, base, tried, difference }) => (
          <tr key={title}>
            <th scope="row">{inUnits(title)}</th>
            <td data-side={text.logged}>{logged ?? ''}</td>
            <td data-side={text.base}>
              <Value shown={base} />
            </td>
            <td data-side={text.tried}>
              <Value shown={tried} />
            </td>
            <td data-side={text.difference}>{difference ?? ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Value({ shown }: { readonly shown: ShownValue | null }) {
  return shown === null ? (
    <span className={styles['none']}>{text.notTold}</span>
  ) : (
    <BandValue shown={shown} />
  );
}
