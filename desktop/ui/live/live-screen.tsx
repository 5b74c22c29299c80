import { useMediaQuery } from '@mantine/hooks';
import { ProblemNote } from '../shell/problem-note.tsx';
import { selectDecision, selectSite, selectSiteName } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { AlarmCard } from './alarm-card.tsx';
import { CautionCard } from './caution-card.tsx';
import { ImportedCard, selectImported } from './imported-card.tsx';
import styles from './live-screen.module.css';
import { LoopCard } from './loop-card.tsx';
import { ReadingCard } from './reading-card.tsx';
import { RecentCard } from './recent-card.tsx';
import { RequestCard } from './request-card.tsx';
import { StateCard } from './state-card.tsx';
import { TodayCard } from './today-card.tsx';

const selectThere = (state: LiveState) =>
  selectDecision(state) !== undefined && selectSite(state) !== undefined;

/** What the loop does, whether that is right, and what came home today. */
export function LiveScreen() {
  const there = useLive(selectThere);
  const imported = useLive(selectImported);
  return (
    <>
      <h1 className="visually-hidden">{en.live.title}</h1>
      {there ? <Loop /> : imported ? <ImportedCard /> : <Untold />}
    </>
  );
}

/** A site that was named and has told nothing. Where none is named, what stands on top says it all. */
function Untold() {
  const site = useLive(selectSiteName);
  return site === null ? null : (
    <ProblemNote problem={{ severity: 'note', text: en.live.untold, tip: en.live.untoldTip }} />
  );
}

function Loop() {
  const wide = useMediaQuery('(min-width: 62em)', undefined, { getInitialValueInEffect: false });
  return wide ? (
    <div className={styles['grid']}>
      <div className={styles['column']}>
        <StateCard />
        <LoopCard />
        <RecentCard />
        <CautionCard />
      </div>
      <div className={styles['column']}>
        <TodayCard />
        <AlarmCard />
        <RequestCard />
        <ReadingCard />
      </div>
    </div>
  ) : (
    // One column reads, and is walked through by keyboard, in the order of what matters.
    <div className={styles['column']}>
      <StateCard />
      <TodayCard />
      <AlarmCard />
      <LoopCard />
      <RequestCard />
      <ReadingCard />
      <RecentCard />
      <CautionCard />
    </div>
  );
}
