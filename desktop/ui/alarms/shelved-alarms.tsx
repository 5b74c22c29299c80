import { Button } from '@mantine/core';
import { useMemo } from 'react';
import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { durationText } from '../format/times.ts';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { useSentence, useTimes } from '../shell/use-formats.ts';
import { selectAlarms, selectListening } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { AlarmMark } from './alarm-mark.tsx';
import styles from './shelved-alarms.module.css';
import { useMinute } from './use-now.ts';

const text = en.alarms.shelved;

/** What was put aside, each with its end. */
export function ShelvedAlarms({ site }: { readonly site: string }) {
  const alarms = useLive(selectAlarms);
  const shelved = useMemo(() => alarms.filter(({ state }) => state === 'shelved'), [alarms]);
  if (shelved.length === 0) return null;
  return (
    <Card heading={text.heading}>
      <p className={styles['soft']}>{text.lead}</p>
      <ul>
        {shelved.map((alarm) => (
          <li key={alarm.code} className={styles['row']} data-shelved={alarm.code}>
            <Shelved site={site} alarm={alarm} />
          </li>
        ))}
      </ul>
    </Card>
  );
}

function Shelved({ site, alarm }: { readonly site: string; readonly alarm: Alarm }) {
  const feed = useFeed();
  const listening = useLive(selectListening);
  const inUnits = useSentence();
  const { title } = alarmCatalogue[alarm.code];
  return (
    <>
      <AlarmMark alarm={alarm} />
      <div className={styles['words']}>
        <h3>{title}</h3>
        {alarm.text === `${title}.` ? null : <p>{inUnits(alarm.text)}</p>}
        <p className={styles['soft']}>
          <Until alarm={alarm} /> {alarm.active ? text.stands : text.over}.
        </p>
      </div>
      <Button
        size="xs"
        variant="default"
        disabled={!listening}
        onClick={() => void feed.request(site, { kind: 'unshelve', alarm: alarm.code })}
      >
        {text.unshelve}
        <span className="visually-hidden">: {title}</span>
      </Button>
    </>
  );
}

function Until({ alarm: { shelvedUntilMs } }: { readonly alarm: Alarm }) {
  const times = useTimes();
  const nowMs = useMinute();
  if (shelvedUntilMs === undefined) return null;
  const left = durationText(shelvedUntilMs - nowMs);
  return `${text.until(times.moment(shelvedUntilMs, nowMs), left)};`;
}
