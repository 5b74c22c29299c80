import type { ReplayReport } from '../../../shared-types/log.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers, useSentence, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './comparison.module.css';
import { GivenInputs } from './given-inputs.tsx';
import { outcomeRows } from './outcome-rows.ts';

const text = en.replay;

interface Props {
  readonly difference: NonNullable<ReplayReport['firstDifference']>;
}

/** Where both sides part: what each decided, why, and what they were given. */
export function DifferenceCard({ difference }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const inUnits = useSentence();
  return (
    <Card heading={text.first(times.clockWithSeconds(difference.atMs))}>
      <p className={styles['lead']}>{text.fieldsDiffer(difference.fields.join(', '))}</p>
      <table className={`ruled ${styles['table']}`}>
        <thead>
          <tr>
            <th scope="col">{text.totals.what}</th>
            <th scope="col">{text.sides.logged}</th>
            <th scope="col">{text.sides.replayed}</th>
          </tr>
        </thead>
        <tbody>
          {outcomeRows(difference, numbers, inUnits).map(({ title, logged, replayed }) => (
            <tr key={title}>
              <th scope="row">{title}</th>
              <td>{logged}</td>
              <td className={logged === replayed ? undefined : styles['differs']}>{replayed}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <GivenInputs input={difference.input} />
    </Card>
  );
}
