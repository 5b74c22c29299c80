import { useShallow } from 'zustand/react/shallow';
import { type Channel, channels } from '../../../shared-types/channels.ts';
import { differenceIn } from '../format/units.ts';
import { Card } from '../shell/card.tsx';
import { selectTemperatureUnit, useChoices } from '../store/choices-store.ts';
import { selectDifferenceK } from '../store/decision-selectors.ts';
import { selectDecision } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './reading-card.module.css';
import { useReadingView } from './use-reading-view.ts';

const selectFitted = (state: LiveState): Channel[] => {
  const readings = selectDecision(state)?.belief.readings ?? {};
  return channels.filter((channel) => readings[channel] !== undefined);
};

/** Every sensor of the loop with its value, or with why it has none. */
export function ReadingCard() {
  const fitted = useLive(useShallow(selectFitted));
  return (
    <Card heading={en.live.readings.heading}>
      <dl>
        {fitted.map((channel) => (
          <Reading key={channel} channel={channel} />
        ))}
        <Difference />
      </dl>
    </Card>
  );
}

function Reading({ channel }: { readonly channel: Channel }) {
  const view = useReadingView(channel);
  if (view === undefined) return null;
  return (
    <div className={`${styles['row']} ${styles[view.look]}`} data-channel={channel} data-look={view.look}>
      <dt>{view.title}</dt>
      <dd className="number">
        <span className={styles['value']}>{view.value}</span>
        {view.note === undefined ? null : <span className={styles['note']}>{view.note}</span>}
      </dd>
    </div>
  );
}

function Difference() {
  const differenceK = useLive(selectDifferenceK) ?? null;
  const unit = useChoices(selectTemperatureUnit);
  const value =
    differenceK === null
      ? en.live.readings.notKnown
      : `${differenceIn(unit, differenceK).toFixed(1)}\u00a0${unit === 'C' ? 'K' : '°F'}`;
  return (
    <div className={styles['row']}>
      <dt>{en.live.readings.difference}</dt>
      <dd className="number">{value}</dd>
    </div>
  );
}
