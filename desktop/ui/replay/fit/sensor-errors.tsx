import type { SensorError } from '../../../../shared-types/tuning.ts';
import { useChartLook } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import blocks from '../blocks.module.css';
import styles from './fit-details.module.css';
import { titleOf } from './fit-words.ts';
import { differenceText, significant } from './significant.ts';

const text = en.tuning.fit.sensors;

/** What each sensor shows more than is true, as far as the days tell. */
export function SensorErrors({ errors }: { readonly errors: readonly SensorError[] }) {
  const { units } = useChartLook();
  if (errors.length === 0) return null;
  const told = ({ channel, kind }: SensorError, value: number) =>
    kind === 'share' ? significant(100 * value, '%') : differenceText(channel, value, units.temperature);
  return (
    <table className={`ruled number ${styles['table']} ${blocks['blocks']}`}>
      <caption>{text.heading}</caption>
      <thead>
        <tr>
          <th scope="col">{text.sensor}</th>
          <th scope="col">{text.tooMuch}</th>
          <th scope="col">{en.tuning.fit.error}</th>
        </tr>
      </thead>
      <tbody>
        {errors.map((error) => (
          <tr key={`${error.channel} ${error.kind}`}>
            <th scope="row">{titleOf(error.channel)}</th>
            <td data-side={text.tooMuch}>{told(error, error.value)}</td>
            <td data-side={en.tuning.fit.error}>{told(error, error.standardError)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
