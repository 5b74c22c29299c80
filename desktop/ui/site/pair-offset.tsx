import { inLine } from '../format/numbers.ts';
import { useNumbers } from '../shell/use-formats.ts';
import { selectDecision, selectSite } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './sensor-card.module.css';

const text = en.site.sensors;

const selectOffsetK = (state: LiveState) => selectDecision(state)?.belief.pair.offsetK ?? 0;
const selectSdK = (state: LiveState) => selectDecision(state)?.belief.pair.sdK ?? 0;
const selectCompared = (state: LiveState) => selectDecision(state)?.learnt['outletOffsetK'] !== undefined;
const selectHasOutlet = (state: LiveState) => selectSite(state)?.sensors.panOutletC !== undefined;

/** What the pair of sensors that the pump is judged by disagrees by, as far as it is known. */
export function PairOffset() {
  const offsetK = useLive(selectOffsetK);
  const sdK = useLive(selectSdK);
  const compared = useLive(selectCompared);
  const hasOutlet = useLive(selectHasOutlet);
  const numbers = useNumbers();
  if (!hasOutlet) return null;
  const uncertainty = inLine(numbers.difference(sdK));
  const offset = inLine(numbers.difference(Math.abs(offsetK)));
  return (
    <p className={styles['pair']}>
      {compared
        ? text.pair(offset, offsetK < 0 ? 'less' : 'more', uncertainty)
        : text.pairUnknown(uncertainty)}
    </p>
  );
}
