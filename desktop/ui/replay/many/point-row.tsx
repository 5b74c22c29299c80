import type { SweepPoint } from '../../../../shared-types/tuning.ts';
import { inLine } from '../../format/numbers.ts';
import { durationText } from '../../format/times.ts';
import { useChartLook, useNumbers } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { changeText } from '../changed-settings.ts';
import { signedRange, signedText } from '../other/gain.ts';
import styles from './many.module.css';

const text = en.tuning.many;
const { columns } = text;

interface Props {
  readonly point: SweepPoint;
  /** Name that the buttons of all rows share. */
  readonly group: string;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

/** One combination: chosen by its button, with all that it brought. */
export function PointRow({ point, group, chosen, onChoose }: Props) {
  const numbers = useNumbers();
  const { units } = useChartLook();
  const heat = (valueJ: number) => inLine(numbers.heat(valueJ));
  const kelvin = (value: number | null) => (value === null ? '' : inLine(numbers.difference(value)));
  const { value, low, high } = point.heatGainJ;
  return (
    <tr className={chosen ? styles['picked'] : undefined}>
      <th scope="row">
        <label>
          <input type="radio" name={group} checked={chosen} onChange={onChoose} />{' '}
          {changeText(point.change, units.temperature, text.inForce)}
        </label>
      </th>
      <td data-side={columns.gain}>
        <span>
          {signedText(value, heat)}
          {low === high ? null : <span className={styles['band']}>{signedRange(low, high, heat)}</span>}
        </span>
      </td>
      <td data-side={columns.heat}>{heat(point.heatHomeJ.value)}</td>
      <td data-side={columns.starts}>{numbers.count(point.starts)}</td>
      <td data-side={columns.fills}>{numbers.count(point.fills)}</td>
      <td data-side={columns.electricity}>{heat(point.electricityJ)}</td>
      <td data-side={columns.frost}>{kelvin(point.aboveFreezingK)}</td>
      <td data-side={columns.liner}>{kelvin(point.belowLinerLimitK)}</td>
      <td data-side={columns.beyondLog}>
        {point.beyondLogS === 0 ? '' : durationText(point.beyondLogS * 1000)}
      </td>
      <td data-side={columns.front}>{point.onFront ? text.onFront : ''}</td>
    </tr>
  );
}
