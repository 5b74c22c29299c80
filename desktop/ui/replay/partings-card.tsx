import type { ReplayReport } from '../../../shared-types/log.ts';
import { durationText } from '../format/times.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers, useSentence, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './comparison.module.css';

const text = en.replay.partings;

/** Stretches that one card has room for. */
const mostShown = 12;

type Props = Pick<ReplayReport, 'parted' | 'partings' | 'asked'>;

/** Where the loop would have been driven otherwise, why, and what each side asked of it in all. */
export function PartingsCard({ parted, partings, asked }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const inUnits = useSentence();
  const shown = parted.slice(0, mostShown);
  const count = ({ starts, fills, pumpRunS }: Props['asked']['logged']) =>
    text.asked(numbers.count(starts), numbers.count(fills), durationText(pumpRunS * 1000));
  return (
    <Card heading={text.heading}>
      <p className={styles['lead']}>{text.hint}</p>
      <table className={`ruled ${styles['table']}`}>
        <thead>
          <tr>
            <th scope="col">{text.when}</th>
            <th scope="col">{en.replay.sides.logged}</th>
            <th scope="col">{en.replay.sides.replayed}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ fromMs, toMs, logged, replayed }) => (
            <tr key={fromMs}>
              <th scope="row" className="number">
                {text.stretch(times.clock(fromMs), times.clock(toMs))}
              </th>
              <td>{inUnits(logged.reason)}</td>
              <td>{inUnits(replayed.reason)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">{text.all}</th>
            <td>{count(asked.logged)}</td>
            <td>{count(asked.replayed)}</td>
          </tr>
        </tbody>
      </table>
      {partings > shown.length ? <p>{text.more(numbers.count(partings - shown.length))}</p> : null}
    </Card>
  );
}
