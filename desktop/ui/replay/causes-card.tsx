import type { ReplayReport } from '../../../shared-types/log.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './comparison.module.css';
import { reasonTitle } from './reason-title.ts';

const text = en.replay.causes;

/** How many steps differ, by what and by which reasons. */
export function CausesCard({ byField, byCause }: Pick<ReplayReport, 'byField' | 'byCause'>) {
  const numbers = useNumbers();
  const fields = Object.entries(byField).sort(([, one], [, other]) => other - one);
  return (
    <Card heading={text.heading}>
      <p className={styles['lead']}>
        {fields.map(([field, steps]) => text.field(field, numbers.count(steps))).join(', ')}
      </p>
      <table className={`ruled ${styles['table']}`}>
        <thead>
          <tr>
            <th scope="col">{en.replay.sides.logged}</th>
            <th scope="col">{en.replay.sides.replayed}</th>
            <th scope="col">{text.steps}</th>
          </tr>
        </thead>
        <tbody>
          {byCause.map(({ logged, replayed, steps }) => (
            <tr key={`${logged} ${replayed}`}>
              <td>{reasonTitle(logged)}</td>
              <td>{reasonTitle(replayed)}</td>
              <td className="number">{numbers.count(steps)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Card>
  );
}
