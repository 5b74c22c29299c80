import { durationText } from '../format/times.ts';
import { useSentence, useTimes } from '../shell/use-formats.ts';
import { selectAlarms } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './episode-row.module.css';
import type { Episode } from './episodes.ts';

const text = en.alarms.history;

interface Props {
  readonly episode: Episode;
  readonly nowMs: number;
}

/** A past alarm: when it was raised, seen and over. */
export function EpisodeRow({ episode, nowMs }: Props) {
  const times = useTimes();
  const inUnits = useSentence();
  const stands = useLive(selectStands(episode));
  const { title, priority, raisedMs, acknowledgedMs, returnedMs, shelved } = episode;
  const moment = (atMs: number) => times.moment(atMs, nowMs);
  const lasted =
    raisedMs === null || returnedMs === null ? '' : ` ${text.lasted(durationText(returnedMs - raisedMs))}`;
  return (
    <li className={styles['row']}>
      <div>
        <h3>{title}</h3>
        {episode.text === `${title}.` ? null : <p>{inUnits(episode.text)}</p>}
        <p className={styles['soft']}>
          {en.priorities[priority]}
          {shelved === 0 ? '' : `, ${text.shelved(shelved)}`}
        </p>
      </div>
      <dl className={`${styles['times']} number`}>
        <div>
          <dt>{text.raised}</dt>
          <dd>{raisedMs === null ? text.before : moment(raisedMs)}</dd>
        </div>
        <div>
          <dt>{text.acknowledged}</dt>
          <dd>{acknowledgedMs === null ? text.notSeen : moment(acknowledgedMs)}</dd>
        </div>
        <div>
          <dt>{text.returned}</dt>
          <dd>
            {returnedMs === null
              ? stands
                ? text.stands
                : text.endUnknown
              : `${moment(returnedMs)}${lasted}`}
          </dd>
        </div>
      </dl>
    </li>
  );
}

/** True while the alarm of this episode is the one that stands now. */
const selectStands =
  ({ code, raisedMs }: Episode) =>
  (state: LiveState): boolean =>
    selectAlarms(state).some((alarm) => alarm.code === code && alarm.active && alarm.sinceMs === raisedMs);
