import { useMemo } from 'react';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { alarmGroups } from '../live/alarm-tree.ts';
import { Card } from '../shell/card.tsx';
import { OutcomeNote } from '../shell/outcome-note.tsx';
import { useUnavailable } from '../shell/use-unavailable.ts';
import { selectAlarms } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { AlarmDetail } from './alarm-detail.tsx';
import { askedName, askedOnAlarms } from './asked-name.ts';
import styles from './current-alarms.module.css';

const text = en.alarms;

/** What stands or was not yet seen: first causes on top, what follows from each folded below it. */
export function CurrentAlarms({ site }: { readonly site: string }) {
  const alarms = useLive(selectAlarms);
  const unavailable = useUnavailable();
  const groups = useMemo(() => alarmGroups(alarms.filter(({ state }) => state !== 'shelved')), [alarms]);
  return (
    <>
      <OutcomeNote kinds={askedOnAlarms} nameOf={askedName} />
      {groups.length === 0 ? null : (
        <Card heading={text.current}>
          <p className={styles['lead']}>{unavailable ?? text.acknowledgeMeans}</p>
          <ul className={styles['list']}>
            {groups.map(({ head, followers }) => (
              <li
                key={head.code}
                className={`${styles['group']} ${head.active ? styles[head.priority] : ''}`}
              >
                <AlarmDetail site={site} alarm={head} />
                <Followers site={site} alarms={followers} />
              </li>
            ))}
          </ul>
        </Card>
      )}
    </>
  );
}

function Followers({ site, alarms }: { readonly site: string; readonly alarms: readonly Alarm[] }) {
  if (alarms.length === 0) return null;
  return (
    <details className={styles['followers']}>
      <summary>{en.live.alarms.followers(alarms.length)}</summary>
      <ul>
        {alarms.map((alarm) => (
          <li key={alarm.code}>
            <AlarmDetail site={site} alarm={alarm} />
          </li>
        ))}
      </ul>
    </details>
  );
}
