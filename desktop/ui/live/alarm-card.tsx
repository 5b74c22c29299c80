import { Button } from '@mantine/core';
import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { useAddress } from '../shell/use-address.ts';
import { useSentence, useTimes } from '../shell/use-formats.ts';
import { selectAlarms, selectListening, selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './alarm-card.module.css';
import { type AlarmGroup, alarmGroups } from './alarm-tree.ts';

const text = en.live.alarms;

/** What is wrong: first causes on top, what follows from them folded below. */
export function AlarmCard() {
  const groups = alarmGroups(useLive(selectAlarms));
  const address = useAddress();
  return (
    <Card heading={text.heading} aside={<a href={address({ screen: 'alarms' })}>{en.alarms.toAll}</a>}>
      {groups.length === 0 ? <p className={styles['none']}>{text.none}</p> : null}
      <ul className={styles['list']}>
        {groups.map((group) => (
          <li key={group.head.code}>
            <Group group={group} />
          </li>
        ))}
      </ul>
    </Card>
  );
}

function Group({ group: { head, followers } }: { readonly group: AlarmGroup }) {
  return (
    <div className={`${styles['group']} ${head.active ? styles[head.priority] : ''}`}>
      <AlarmText alarm={head} />
      {followers.length === 0 ? null : (
        <details className={styles['followers']}>
          <summary>{text.followers(followers.length)}</summary>
          {followers.map((alarm) => (
            <AlarmText key={alarm.code} alarm={alarm} />
          ))}
        </details>
      )}
    </div>
  );
}

function AlarmText({ alarm }: { readonly alarm: Alarm }) {
  const inUnits = useSentence();
  const { title, likelyCauses, consequence, response, howSoon } = alarmCatalogue[alarm.code];
  const since = useTimes().clock(alarm.sinceMs);
  return (
    <div className={styles['alarm']}>
      <h3>{title}</h3>
      <p className={styles['when']}>
        {alarm.active
          ? text.standing(en.priorities[alarm.priority], since, en.alarmStates[alarm.state])
          : text.past(since, en.alarmStates[alarm.state])}
      </p>
      {alarm.text === `${title}.` ? null : <p>{inUnits(alarm.text)}</p>}
      {alarm.active ? (
        <p className={styles['advice']}>
          {text.likelyCauses(likelyCauses)} {consequence} <strong>{response}</strong> {howSoon}
        </p>
      ) : null}
      <Acknowledge alarm={alarm} />
    </div>
  );
}

function Acknowledge({ alarm }: { readonly alarm: Alarm }) {
  const feed = useFeed();
  const site = useLive(selectSiteName);
  const listening = useLive(selectListening);
  const unseen = alarm.state === 'unacknowledged' || alarm.state === 'returned-unacknowledged';
  if (!unseen || site === null) return null;
  return (
    <Button
      size="xs"
      variant="default"
      mt={6}
      disabled={!listening}
      onClick={() => void feed.request(site, { kind: 'acknowledge', alarm: alarm.code })}
    >
      {text.acknowledge}
      <span className="visually-hidden">: {alarmCatalogue[alarm.code].title}</span>
    </Button>
  );
}
