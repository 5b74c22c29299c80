import type { DayCurves } from '../../../../shared-types/log.ts';
import { type SeriesName, seriesTitle, seriesValues } from '../../charts/series.ts';
import { seriesText } from '../../format/series-value.ts';
import { useNumbers, useTimes } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { nearestIndex, phaseAt } from '../scrub.ts';
import styles from './two-curves.module.css';

const text = en.tuning.other;

interface Props {
  readonly base: DayCurves;
  readonly tried: DayCurves;
  readonly names: readonly SeriesName[];
  readonly cursorMs: number;
  readonly onCursor: (atMs: number) => void;
}

/** One instant through both sides: a slider that moves it, and what every drawn curve held then. */
export function TwoValues({ base, tried, names, cursorMs, onCursor }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const index = nearestIndex(base.atMs, cursorMs);
  const phases = [base, tried].map((curves) => phaseText(curves, cursorMs));
  const valueAt = (curves: DayCurves, name: SeriesName) => {
    const value = seriesValues(curves, name)?.[nearestIndex(curves.atMs, cursorMs)] ?? null;
    return value === null ? en.charts.noValue : seriesText(name, value, numbers);
  };
  return (
    <div>
      <input
        type="range"
        className={styles['slider']}
        aria-label={text.cursor}
        aria-valuetext={`${times.clock(cursorMs)}; ${text.base}: ${phases[0]}; ${text.tried}: ${phases[1]}`}
        min={0}
        max={base.atMs.length - 1}
        value={index}
        onChange={(event) => onCursor(base.atMs[Number(event.currentTarget.value)] ?? cursorMs)}
      />
      <table className={`ruled number ${styles['values']}`}>
        <thead>
          <tr>
            <th scope="col">{times.clock(cursorMs)}</th>
            <th scope="col">{text.base}</th>
            <th scope="col">{text.tried}</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{en.charts.phase}</th>
            <td>{phases[0]}</td>
            <td>{phases[1]}</td>
          </tr>
          {names.map((name) => (
            <tr key={name}>
              <th scope="row">{seriesTitle(name)}</th>
              <td>{valueAt(base, name)}</td>
              <td>{valueAt(tried, name)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function phaseText({ phases }: DayCurves, atMs: number): string {
  const span = phaseAt(phases, atMs);
  return span === undefined ? en.replay.scrub.noPhase : en.phases[span.phase];
}
