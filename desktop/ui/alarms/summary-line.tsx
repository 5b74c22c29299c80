import { durationText } from '../format/times.ts';
import { useTimes } from '../shell/use-formats.ts';
import { selectAlarmEvents, useHistory } from '../store/history-store.ts';
import { selectDecision, selectLagMs } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { readyValue } from '../store/loaded.ts';
import { en } from '../text/en.ts';
import { episodesOf } from './episodes.ts';
import { summaryOf } from './summary.ts';
import styles from './summary-line.module.css';
import { useMinute } from './use-now.ts';

const text = en.alarms.summary;

const selectAlarmsOrNone = (state: LiveState) => selectDecision(state)?.alarms;

/** How things stand now, and when all is well, when the last alarm was. */
export function SummaryLine({ site }: { readonly site: string }) {
  const alarms = useLive(selectAlarmsOrNone);
  const lagMs = useLive(selectLagMs);
  const summary = summaryOf(alarms, lagMs === 0 ? undefined : durationText(lagMs));
  return (
    <>
      <p className={styles['line']}>{summary}</p>
      {alarms?.length === 0 ? <LastAlarm site={site} /> : null}
    </>
  );
}

function LastAlarm({ site }: { readonly site: string }) {
  const events = readyValue(useHistory(selectAlarmEvents(site)));
  const nowMs = useMinute();
  const times = useTimes();
  if (events === undefined) return null;
  const last = episodesOf(events)[0];
  if (last === undefined) return <p className={styles['last']}>{text.never}</p>;
  const { raisedMs, returnedMs, newestMs, title } = last;
  const moment =
    returnedMs === null
      ? text.lastBegan(times.moment(raisedMs ?? newestMs, nowMs))
      : text.lastOver(times.moment(returnedMs, nowMs));
  return <p className={styles['last']}>{text.last(title, moment)}</p>;
}
