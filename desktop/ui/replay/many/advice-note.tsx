import type { SweepReport } from '../../../../shared-types/tuning.ts';
import { useSentence } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import styles from './many.module.css';

const text = en.tuning.many;

/** What is advised and why, in the words of the sweep. */
export function AdviceNote({ report }: { readonly report: SweepReport }) {
  const inUnits = useSentence();
  return (
    <section aria-label={text.advice} className={styles['advice']}>
      <h3>{text.advice}</h3>
      <p>
        {inUnits(report.advice.text)} {text.adviceNote}
      </p>
    </section>
  );
}
