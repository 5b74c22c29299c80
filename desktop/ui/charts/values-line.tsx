import type { DayCurves } from '../../../shared-types/log.ts';
import { seriesText } from '../format/series-value.ts';
import { phaseAt } from '../replay/scrub.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { type SeriesName, seriesTitle, seriesValues } from './series.ts';
import styles from './values-line.module.css';

interface Props {
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
  readonly index: number;
  readonly onIndex: (index: number) => void;
}

/** One instant through all bands: a slider that moves it, and in one line what every drawn curve held then. */
export function ValuesLine({ curves, names, index, onIndex }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const atMs = curves.atMs[index] ?? 0;
  const phase = phaseAt(curves.phases, atMs)?.phase;
  // A day of another logger has no phase at any instant.
  const noPhase = curves.phases.length === 0 ? '' : en.replay.scrub.noPhase;
  const phaseText = phase === undefined ? noPhase : en.phases[phase];
  return (
    <div>
      <input
        type="range"
        className={styles['slider']}
        aria-label={en.charts.cursor}
        aria-valuetext={`${times.clockWithSeconds(atMs)}, ${phaseText}`}
        min={0}
        max={curves.atMs.length - 1}
        value={index}
        onChange={(event) => onIndex(Number(event.currentTarget.value))}
      />
      <ul className={`${styles['values']} number`}>
        <li>
          <strong>{times.clockWithSeconds(atMs)}</strong> {phaseText}
        </li>
        {names.map((name) => {
          const value = seriesValues(curves, name)?.[index] ?? null;
          return (
            <li key={name}>
              <span className={styles['title']}>{seriesTitle(name)}</span>{' '}
              {value === null ? en.charts.noValue : seriesText(name, value, numbers)}
            </li>
          );
        })}
      </ul>
    </div>
  );
}
