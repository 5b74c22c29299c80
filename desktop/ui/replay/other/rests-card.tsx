import type { Comparison } from '../../../../shared-types/tuning.ts';
import { inLine } from '../../format/numbers.ts';
import { Card } from '../../shell/card.tsx';
import { useChartLook, useNumbers, useSentence } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { changedLines } from '../changed-settings.ts';
import styles from '../tuning.module.css';
import { worldLines } from './world-origins.ts';

const text = en.tuning.other;

/** Where loop and world came from, how well the loop stands in, and what bounds the answer. */
export function RestsCard({ comparison }: { readonly comparison: Comparison }) {
  const numbers = useNumbers();
  const inUnits = useSentence();
  const { units } = useChartLook();
  const { logged, base, loop, remarks, settingsThen, settingsTried, bestPossibleJ } = comparison;
  const heat = (valueJ: number) => inLine(numbers.heat(valueJ));
  const changed = changedLines(settingsThen, settingsTried, units.temperature);
  return (
    <Card heading={text.rests}>
      <ul className={styles['lines']}>
        {logged.heatHomeJ === null ? null : (
          <li>{text.stands(heat(logged.heatHomeJ), heat(base.heatHomeJ.value))}</li>
        )}
        <li>{text.loop(loop.origin, inUnits(loop.text))}</li>
        {worldLines(comparison).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {bestPossibleJ === null ? null : <li>{text.bestPossible(heat(bestPossibleJ))}</li>}
        {remarks.map((remark) => (
          <li key={remark}>{inUnits(remark)}</li>
        ))}
      </ul>
      {changed.length === 0 ? null : (
        <>
          <p className={styles['soft']}>{text.changed}</p>
          <ul className={styles['lines']}>
            {changed.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </Card>
  );
}
