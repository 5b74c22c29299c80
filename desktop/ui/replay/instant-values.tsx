import type { DayCurves } from '../../../shared-types/log.ts';
import { presentSeries, seriesTitle, seriesValues } from '../charts/series.ts';
import { seriesText } from '../format/series-value.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './instant-values.module.css';
import { phaseAt } from './scrub.ts';

interface Props {
  readonly curves: DayCurves;
  readonly index: number;
}

/** All that held at one instant of a day: time, phase, reason and every value. */
export function InstantValues({ curves, index }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const atMs = curves.atMs[index] ?? 0;
  const span = phaseAt(curves.phases, atMs);
  return (
    <div className={styles['values']}>
      <p className={`${styles['time']} number`}>{times.clockWithSeconds(atMs)}</p>
      <p className={styles['phase']}>
        {span === undefined ? en.replay.scrub.noPhase : en.phases[span.phase]}
        {span === undefined ? null : <span className={styles['reason']}>{en.reasons[span.reason]}</span>}
      </p>
      <dl className="number">
        {presentSeries(curves).map((name) => {
          const value = seriesValues(curves, name)?.[index] ?? null;
          return (
            <div key={name} className={styles['row']}>
              <dt>{seriesTitle(name)}</dt>
              <dd>{value === null ? en.charts.noValue : seriesText(name, value, numbers)}</dd>
            </div>
          );
        })}
      </dl>
    </div>
  );
}
