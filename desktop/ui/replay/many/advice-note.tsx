import type { SweepReport } from '../../../../shared-types/tuning.ts';
import { useChartLook } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { changeText } from '../changed-settings.ts';
import styles from './many.module.css';
import { advisedIndex } from './trade-off.ts';

const text = en.tuning.many;

/** What is advised and why. */
export function AdviceNote({ report }: { readonly report: SweepReport }) {
  const { units } = useChartLook();
  const index = advisedIndex(report);
  const change = index === null ? {} : (report.points[index]?.change ?? {});
  return (
    <section aria-label={text.advice} className={styles['advice']}>
      <h3>
        {text.advice}: {changeText(change, units.temperature, text.stay)}
      </h3>
      <p>
        {report.advice.text} {text.adviceNote}
      </p>
    </section>
  );
}
