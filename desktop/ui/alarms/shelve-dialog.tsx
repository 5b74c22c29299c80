import { Button, Group, Modal, SegmentedControl } from '@mantine/core';
import { useId, useState } from 'react';
import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './shelve-dialog.module.css';
import { useMinute } from './use-now.ts';

const text = en.alarms.shelve;

/** Hours that are offered; the longest is the most that the controller allows. */
const hoursOffered = ['1', '4', '8', '24'];
const minutesOf = (hours: string) => Number(hours) * 60;

interface Props {
  /** The alarm in question, or null while nobody asks. */
  readonly alarm: Alarm | null;
  readonly onConfirm: (minutes: number) => void;
  readonly onCancel: () => void;
}

/** Asks for how long an alarm is put aside, and says what that means; the harmless way out has the focus. */
export function ShelveDialog({ alarm, onConfirm, onCancel }: Props) {
  return (
    <Modal
      opened={alarm !== null}
      onClose={onCancel}
      centered
      title={alarm === null ? '' : text.title(alarmCatalogue[alarm.code].title)}
      classNames={{ title: styles['title'] ?? '' }}
      closeButtonProps={{ 'aria-label': text.cancel }}
      // The head of a dialog is no banner of the page.
      attributes={{ header: { role: 'presentation' } }}
      transitionProps={{ duration: 0 }}
    >
      <Choice onConfirm={onConfirm} onCancel={onCancel} />
    </Modal>
  );
}

function Choice({ onConfirm, onCancel }: Omit<Props, 'alarm'>) {
  const [hours, setHours] = useState('1');
  const times = useTimes();
  const nowMs = useMinute();
  const labelId = useId();
  const moment = times.moment(nowMs + minutesOf(hours) * 60_000, nowMs);
  return (
    <>
      <p id={labelId}>{text.hours}</p>
      <SegmentedControl
        aria-labelledby={labelId}
        value={hours}
        data={hoursOffered.map((value) => ({ value, label: text.choice(Number(value)) }))}
        onChange={setHours}
      />
      <p className={styles['says']} aria-live="polite">
        {text.says(moment)}
      </p>
      <p>{text.stays}</p>
      <Group justify="flex-end" mt="md">
        <Button variant="default" onClick={onCancel} data-autofocus>
          {text.cancel}
        </Button>
        <Button onClick={() => onConfirm(minutesOf(hours))}>{text.confirm}</Button>
      </Group>
    </>
  );
}
