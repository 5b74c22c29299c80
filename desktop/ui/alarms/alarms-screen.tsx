import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { AlarmHistory } from './alarm-history.tsx';
import styles from './alarms-screen.module.css';
import { CurrentAlarms } from './current-alarms.tsx';
import { ShelvedAlarms } from './shelved-alarms.tsx';
import { SummaryLine } from './summary-line.tsx';
import { useAlarmEvents } from './use-alarm-events.ts';

/** What is wrong, since when, what to do and how soon; and what was. */
export default function AlarmsScreen() {
  const site = useLive(selectSiteName);
  const load = useAlarmEvents(site);
  return (
    <div className={styles['screen']}>
      <div>
        <h1 className={styles['title']}>{en.alarms.title}</h1>
        {site === null ? null : <SummaryLine site={site} />}
      </div>
      {site === null ? null : (
        <>
          <CurrentAlarms site={site} />
          <ShelvedAlarms site={site} />
          <AlarmHistory key={site} site={site} onAgain={load} />
        </>
      )}
    </div>
  );
}
