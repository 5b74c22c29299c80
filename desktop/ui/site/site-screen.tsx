import { useMediaQuery } from '@mantine/hooks';
import { selectDecision, selectSite, selectSiteName } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { CommissioningCard } from './commissioning/commissioning-card.tsx';
import { FactsCard } from './facts-card.tsx';
import { LearntCard } from './learnt-card.tsx';
import { LinkCard } from './link-card.tsx';
import { LogCard } from './log-card.tsx';
import { OutputCard } from './output-card.tsx';
import { SensorCard } from './sensor-card.tsx';
import styles from './site-screen.module.css';
import { VersionCard } from './version-card.tsx';

const selectThere = (state: LiveState) =>
  selectDecision(state) !== undefined && selectSite(state) !== undefined;

/** Is everything connected, and was it commissioned? */
export default function SiteScreen() {
  const name = useLive(selectSiteName);
  const there = useLive(selectThere);
  return (
    <>
      <h1 className={styles['title']}>{en.site.title}</h1>
      <p className={styles['lead']}>{there ? en.site.lead : en.site.unheard}</p>
      <div className={styles['cards']}>{there && name !== null ? <Loop site={name} /> : <LinkCard />}</div>
    </>
  );
}

function Loop({ site }: { readonly site: string }) {
  const wide = useMediaQuery('(min-width: 62em)', undefined, { getInitialValueInEffect: false });
  if (!wide)
    // Whoever walks to the loop with a phone wants the run near the top.
    return (
      <>
        <LinkCard />
        <CommissioningCard key={site} site={site} />
        <SensorCard />
        <OutputCard />
        <LearntCard />
        <LogCard site={site} />
        <VersionCard />
        <FactsCard />
      </>
    );
  return (
    <>
      <div className={styles['column']}>
        <LinkCard />
        <SensorCard />
        <OutputCard />
        <FactsCard />
      </div>
      <div className={styles['column']}>
        <CommissioningCard key={site} site={site} />
        <LearntCard />
        <LogCard site={site} />
        <VersionCard />
      </div>
    </>
  );
}
