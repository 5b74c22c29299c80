import type { ImportReport, MissCause } from '../../../../shared-types/foreign-log.ts';
import { en } from '../../text/en.ts';
import styles from './foreign.module.css';

const text = en.foreign;

/** What was not taken as it stands: how often for each cause, and where first. The file's own text stays text. */
export function MissList({ report: { misses, places } }: { readonly report: ImportReport }) {
  if (places.length === 0) return <p>{text.nothingMissed}</p>;
  const heads = text.missedHeads;
  return (
    <>
      <h3>{text.missed}</h3>
      <ul className={styles['list']}>
        {(Object.entries(misses) as [MissCause, number][]).map(([cause, count]) => (
          <li key={cause}>{text.missedCount(count, text.causes[cause])}</li>
        ))}
      </ul>
      <p className={styles['soft']}>{text.firstOnly}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard */}
      <section className={styles['frame']} aria-label={text.missed} tabIndex={0}>
        <table className={`ruled ${styles['table']}`}>
          <thead>
            <tr>
              <th scope="col">{heads.line}</th>
              <th scope="col">{heads.column}</th>
              <th scope="col">{heads.text}</th>
              <th scope="col">{heads.cause}</th>
            </tr>
          </thead>
          <tbody>
            {places.map(({ line, column, text: cell, cause }) => (
              <tr key={`${line} ${column} ${cause}`}>
                <th scope="row" className="number">
                  {line}
                </th>
                <td>
                  <bdi>{column}</bdi>
                </td>
                <td>
                  <bdi>{cell}</bdi>
                </td>
                <td>{text.causes[cause]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
