import { Card } from '../shell/card.tsx';
import { useSentence } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './caution-card.module.css';

/** Cautions that hold for every loop, always in sight at the end of the screen. */
export function CautionCard() {
  const inUnits = useSentence();
  return (
    <Card heading={en.live.cautions.heading}>
      <ul className={styles['list']}>
        {en.live.cautions.standing.map((caution) => (
          <li key={caution}>{inUnits(caution)}</li>
        ))}
      </ul>
    </Card>
  );
}
