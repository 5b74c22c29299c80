import type { Comparison } from '../../../../shared-types/tuning.ts';
import { inLine } from '../../format/numbers.ts';
import { Card } from '../../shell/card.tsx';
import { useNumbers, useTimes } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import styles from '../tuning.module.css';
import { AbsorbedChart } from './absorbed-chart.tsx';
import { absorbedJM2, absorbedRows } from './absorbed-rows.ts';
import { BandValue } from './band-value.tsx';

const text = en.tuning.other.absorbed;

/** What light the pan took up on a day without a sensor of the sun; nothing where there was one. */
export function AbsorbedCard({ comparison: { absorbed } }: { readonly comparison: Comparison }) {
  const numbers = useNumbers();
  const { clock } = useTimes();
  if (absorbed === null) return null;
  return (
    <Card heading={text.heading}>
      <p>{text.sum(inLine(numbers.heat(absorbedJM2(absorbed))))}</p>
      <p className={styles['soft']}>{text.meaning}</p>
      <AbsorbedChart absorbed={absorbed} />
      <details>
        <summary>{text.table}</summary>
        <table className="ruled">
          <thead>
            <tr>
              <th scope="col">{text.time}</th>
              <th scope="col">{text.power}</th>
            </tr>
          </thead>
          <tbody className="number">
            {absorbedRows(absorbed, numbers).map(({ fromMs, toMs, shown }) => (
              <tr key={fromMs}>
                <th scope="row">{text.step(clock(fromMs), clock(toMs))}</th>
                <td>
                  <BandValue shown={shown} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </Card>
  );
}
