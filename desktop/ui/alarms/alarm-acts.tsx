import { Button } from '@mantine/core';
import { useState } from 'react';
import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { useFeed } from '../shell/feed-context.ts';
import { selectListening } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './alarm-acts.module.css';
import { ShelveDialog } from './shelve-dialog.tsx';

const text = en.alarms;

/** What a person may do about an alarm on this screen. */
export function AlarmActs({ site, alarm }: { readonly site: string; readonly alarm: Alarm }) {
  const feed = useFeed();
  const listening = useLive(selectListening);
  const [shelving, setShelving] = useState(false);
  const { code, state, active } = alarm;
  const unseen = state === 'unacknowledged' || state === 'returned-unacknowledged';
  const urgent = alarm.priority === 'urgent';
  const name = <span className="visually-hidden">: {alarmCatalogue[code].title}</span>;
  return (
    <div className={styles['acts']}>
      {unseen ? (
        <Button
          size="xs"
          variant="default"
          disabled={!listening}
          onClick={() => void feed.request(site, { kind: 'acknowledge', alarm: code })}
        >
          {text.acknowledge}
          {name}
        </Button>
      ) : null}
      {active && urgent ? <span className={styles['never']}>{text.shelve.never}</span> : null}
      {active && !urgent ? (
        <Button size="xs" variant="default" disabled={!listening} onClick={() => setShelving(true)}>
          {text.shelve.button}
          {name}
        </Button>
      ) : null}
      <ShelveDialog
        alarm={shelving ? alarm : null}
        onCancel={() => setShelving(false)}
        onConfirm={(minutes) => {
          setShelving(false);
          void feed.request(site, { kind: 'shelve', alarm: code, minutes });
        }}
      />
    </div>
  );
}
