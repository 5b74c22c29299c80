import type { SweepReport } from '../../../../shared-types/tuning.ts';
import { useChartLook, useSentence } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { changeText } from '../changed-settings.ts';
import styles from '../tuning.module.css';

const text = en.tuning.many;

/** What bounds the answer, and which combinations were refused. */
export function SweepNotes({ report: { remarks, refused } }: { readonly report: SweepReport }) {
  const { units } = useChartLook();
  const inUnits = useSentence();
  return (
    <>
      {remarks.length === 0 ? null : (
        <ul className={styles['lines']}>
          {remarks.map((remark) => (
            <li key={remark}>{inUnits(remark)}</li>
          ))}
        </ul>
      )}
      {refused.length === 0 ? null : (
        <div>
          <p>{text.refused}</p>
          <ul className={styles['lines']}>
            {refused.map(({ change, why }) => {
              const line = text.refusedLine(changeText(change, units.temperature, ''), inUnits(why));
              return <li key={line}>{line}</li>;
            })}
          </ul>
        </div>
      )}
    </>
  );
}
