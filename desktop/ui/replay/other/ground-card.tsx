import type { Comparison } from '../../../../shared-types/tuning.ts';
import { Card } from '../../shell/card.tsx';
import { useSentence, useTimes } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import styles from '../tuning.module.css';

const text = en.tuning.other;

/** Where the loop would have gone where the log does not know it, in words. */
export function GroundCard({ comparison: { leftGround } }: { readonly comparison: Comparison }) {
  const { clock } = useTimes();
  const inUnits = useSentence();
  return (
    <Card heading={text.ground}>
      {leftGround.length === 0 ? (
        <p>{text.groundNone}</p>
      ) : (
        <ul className={styles['lines']}>
          {leftGround.map(({ fromMs, toMs, text: why }) => (
            <li key={`${fromMs} ${why}`}>{text.groundLine(clock(fromMs), clock(toMs), inUnits(why))}</li>
          ))}
        </ul>
      )}
    </Card>
  );
}
