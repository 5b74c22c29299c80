import type { Channel } from '../../../shared-types/channels.ts';
import { inLine } from '../format/numbers.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { selectReading } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './scald-caution.module.css';

/** Water above this scalds [°C]; the standing caution of every screen that shows a store. */
const scaldC = 60;
const storeChannels: readonly Channel[] = ['storeTopC', 'storeMiddleC', 'storeBottomC'];

/** Hottest water in the store [°C] if it can scald. A doubtful reading warns as well. */
const selectScaldC = (state: LiveState): number | undefined => {
  const values = storeChannels.flatMap((channel) => {
    const reading = selectReading(channel)(state);
    return reading === undefined || reading.quality === 'failed' ? [] : [reading.value];
  });
  const hottestC = Math.max(-Infinity, ...values);
  return hottestC > scaldC ? hottestC : undefined;
};

export function ScaldCaution() {
  const temperatureC = useLive(selectScaldC);
  const numbers = useNumbers();
  if (temperatureC === undefined) return null;
  const text = en.live.cautions.scald(
    inLine(numbers.temperature(temperatureC)),
    inLine(numbers.temperature(scaldC)),
  );
  return (
    <div className={styles['caution']}>
      <ProblemNote problem={{ severity: 'warning', text }} />
    </div>
  );
}
