import type { PhaseSpan } from '../../../shared-types/log.ts';
import { durationText } from '../format/times.ts';
import { useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './day-tables.module.css';

/** The phases of a day in words. */
export function PhaseTable({ phases }: { readonly phases: readonly PhaseSpan[] }) {
  const times = useTimes();
  const text = en.charts;
  return (
    <table className={`ruled ${styles['table']}`}>
      <thead>
        <tr>
          <th scope="col">{text.from}</th>
          <th scope="col">{text.phase}</th>
          <th scope="col">{text.lasted}</th>
        </tr>
      </thead>
      <tbody>
        {phases.map((span) => (
          <tr key={span.fromMs}>
            <td className="number">{times.clock(span.fromMs)}</td>
            <td>
              {en.phases[span.phase]} <span className={styles['soft']}>{en.reasons[span.reason]}</span>
            </td>
            <td className="number">{durationText(span.toMs - span.fromMs)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
