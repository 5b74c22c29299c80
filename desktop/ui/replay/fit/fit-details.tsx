import type { LoopFit } from '../../../../shared-types/tuning.ts';
import { inLine } from '../../format/numbers.ts';
import { useChartLook, useNumbers } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import blocks from '../blocks.module.css';
import styles from './fit-details.module.css';
import { titleOf, unitText } from './fit-words.ts';
import { SensorErrors } from './sensor-errors.tsx';
import { besideSize, differenceText, significant } from './significant.ts';

const text = en.tuning.fit;

/** Fitted and held values with their errors, and how well the fitted loop meets what was measured. */
export function FitDetails({ fit }: { readonly fit: LoopFit }) {
  return (
    <details className={styles['details']}>
      <summary>{text.parameters}</summary>
      <Parameters fit={fit} />
      <SensorErrors errors={fit.sensorErrors} />
      <Residuals fit={fit} />
    </details>
  );
}

function Parameters({ fit }: { readonly fit: LoopFit }) {
  return (
    <table className={`ruled number ${styles['table']}`}>
      <thead>
        <tr>
          <th scope="col">{text.name}</th>
          <th scope="col">{text.value}</th>
          <th scope="col">{text.error}</th>
        </tr>
      </thead>
      <tbody>
        {fit.parameters.map(({ name, unit, value, standardError, heldBecause }) => (
          <tr key={name}>
            <th scope="row">{titleOf(name)}</th>
            <td>{significant(value, unitText(unit))}</td>
            <td>
              {standardError === null
                ? text.held(heldBecause ?? '')
                : significant(standardError, unitText(unit))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Residuals({ fit }: { readonly fit: LoopFit }) {
  const numbers = useNumbers();
  const { units } = useChartLook();
  if (fit.residuals.length === 0) return null;
  return (
    <table className={`ruled number ${styles['table']} ${blocks['blocks']}`}>
      <caption>{text.residuals}</caption>
      <thead>
        <tr>
          <th scope="col">{text.channel}</th>
          <th scope="col">{text.samples}</th>
          <th scope="col">{text.rms}</th>
          <th scope="col">{text.mean}</th>
          <th scope="col">{text.correlation}</th>
        </tr>
      </thead>
      <tbody>
        {fit.residuals.map(({ channel, samples, rms, mean, lagOneCorrelation }) => (
          <tr key={channel}>
            <th scope="row">{titleOf(channel)}</th>
            <td data-side={text.samples}>{numbers.count(samples)}</td>
            <td data-side={text.rms}>{differenceText(channel, rms, units.temperature)}</td>
            <td data-side={text.mean}>{differenceText(channel, besideSize(mean, rms), units.temperature)}</td>
            <td data-side={text.correlation}>{inLine(numbers.measure(lagOneCorrelation, 2, ''))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
