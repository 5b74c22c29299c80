import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { durationText } from '../format/times.ts';
import { useSentence, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { AlarmActs } from './alarm-acts.tsx';
import styles from './alarm-detail.module.css';
import { AlarmMark } from './alarm-mark.tsx';
import { useMinute } from './use-now.ts';

const text = en.alarms;

interface Props {
  readonly site: string;
  readonly alarm: Alarm;
}

/** One alarm: what it is, since when, why, what to do and how soon. */
export function AlarmDetail({ site, alarm }: Props) {
  const inUnits = useSentence();
  const { title } = alarmCatalogue[alarm.code];
  return (
    <article className={styles['alarm']} data-alarm={alarm.code}>
      <div className={styles['head']}>
        <AlarmMark alarm={alarm} />
        <h3>{title}</h3>
        <span className={styles['state']}>{en.alarmStates[alarm.state]}</span>
      </div>
      <div className={styles['body']}>
        <p className={styles['when']}>
          {alarm.active ? `${en.priorities[alarm.priority]}. ` : ''}
          <When alarm={alarm} />
        </p>
        {alarm.text === `${title}.` ? null : <p>{inUnits(alarm.text)}</p>}
        {alarm.follows === undefined ? null : (
          <p className={styles['when']}>{text.followsFrom(alarmCatalogue[alarm.follows].title)}</p>
        )}
        {alarm.active ? <Advice alarm={alarm} /> : null}
        <AlarmActs site={site} alarm={alarm} />
      </div>
    </article>
  );
}

function When({ alarm: { active, sinceMs } }: { readonly alarm: Alarm }) {
  const times = useTimes();
  const nowMs = useMinute();
  const moment = times.moment(sinceMs, nowMs);
  return (
    <time dateTime={new Date(sinceMs).toISOString()}>
      {active ? text.since(moment, durationText(nowMs - sinceMs)) : text.raised(moment)}
    </time>
  );
}

function Advice({ alarm }: { readonly alarm: Alarm }) {
  const { response, howSoon, likelyCauses, consequence } = alarmCatalogue[alarm.code];
  const { facts } = text;
  return (
    <dl className={styles['facts']}>
      <div className={styles['act']}>
        <dt>{facts.response}</dt>
        <dd>{response}</dd>
      </div>
      <div>
        <dt>{facts.howSoon}</dt>
        <dd>{howSoon}</dd>
      </div>
      <div>
        <dt>{facts.likelyCauses}</dt>
        <dd>{likelyCauses}</dd>
      </div>
      <div>
        <dt>{facts.consequence}</dt>
        <dd>{consequence}</dd>
      </div>
    </dl>
  );
}
