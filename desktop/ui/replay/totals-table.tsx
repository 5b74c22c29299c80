import type { Totals } from '../../../shared-types/engine.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './comparison.module.css';

const text = en.replay.totals;

type Show = (value: number, numbers: NumberFormats) => string;
const heat: Show = (value, numbers) => inLine(numbers.heat(value));
const count: Show = (value, numbers) => numbers.count(value);
const lasting: Show = (value) => durationText(value * 1000);

const rows: readonly { readonly title: string; readonly of: keyof Totals; readonly show: Show }[] = [
  { title: text.heatHome, of: 'heatHomeJ', show: heat },
  { title: text.heatLost, of: 'heatLostJ', show: heat },
  { title: text.electricity, of: 'electricityJ', show: heat },
  { title: text.pumpRun, of: 'pumpRunS', show: lasting },
  { title: text.starts, of: 'starts', show: count },
  { title: text.fills, of: 'fills', show: count },
];

/** Totals of both sides beside each other. */
export function TotalsTable({ logged, replayed }: { readonly logged: Totals; readonly replayed: Totals }) {
  const numbers = useNumbers();
  return (
    <Card heading={text.heading}>
      <table className={`ruled ${styles['table']}`}>
        <thead>
          <tr>
            <th scope="col">{text.what}</th>
            <th scope="col">{en.replay.sides.logged}</th>
            <th scope="col">{en.replay.sides.replayed}</th>
            <th scope="col">{text.change}</th>
          </tr>
        </thead>
        <tbody className="number">
          {rows.map(({ title, of, show }) => {
            const change = replayed[of] - logged[of];
            return (
              <tr key={of}>
                <th scope="row">{title}</th>
                <td>{show(logged[of], numbers)}</td>
                <td>{show(replayed[of], numbers)}</td>
                <td className={change === 0 ? styles['equal'] : styles['differs']}>
                  {changeText(change, show(Math.abs(change), numbers))}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Card>
  );
}

function changeText(change: number, amount: string): string {
  if (change === 0) return text.equal;
  return change > 0 ? text.more(amount) : text.less(amount);
}
