import { durationText } from '../format/times.ts';
import { useSentence } from '../shell/use-formats.ts';
import {
  selectLagging,
  selectLease,
  selectPhase,
  selectPhaseForMs,
  selectReasonText,
} from '../store/decision-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './state-card.module.css';

/** The phase and the engine's own sentence for it: the first thing that an owner reads. */
export function StateCard() {
  const phase = useLive(selectPhase);
  const reason = useLive(selectReasonText);
  const inUnits = useSentence();
  const lagging = useLive(selectLagging);
  if (phase === undefined) return null;
  return (
    <section
      aria-label={en.phases[phase]}
      className={`${styles['state']} ${phase === 'stopped' ? styles['stopped'] : ''} ${lagging ? styles['old'] : ''}`}
    >
      <p className={styles['phase']}>
        <strong>{en.phases[phase]}</strong> <PhaseTime />
      </p>
      <p className={styles['reason']}>{inUnits(reason ?? '')}</p>
      <p className={styles['meaning']}>{en.phaseMeanings[phase]}</p>
      <Lease />
    </section>
  );
}

function PhaseTime() {
  const forMs = useLive(selectPhaseForMs) ?? 0;
  return <span className={`${styles['time']} number`}>{en.live.phaseFor(durationText(forMs))}</span>;
}

function Lease() {
  const lease = useLive(selectLease);
  if (lease === null) return null;
  return (
    <p className={styles['lease']}>
      {en.live.askedFor(en.live.leases[lease.kind], durationText(lease.remainingMs))}
    </p>
  );
}
