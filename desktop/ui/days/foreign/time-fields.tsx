import { NativeSelect } from '@mantine/core';
import { type FileHead, type TimeFormat, timeFormats } from '../../../../shared-types/foreign-log.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { en } from '../../text/en.ts';
import type { Draft } from './draft.ts';
import styles from './foreign.module.css';
import { guessTimeFormat } from './guess-columns.ts';

const text = en.foreign;

interface Props {
  readonly head: FileHead;
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
}

/** Format and zone of the times. */
export function TimeFields({ head, draft, onChange }: Props) {
  const { columns, format, zone } = draft;
  const place = columns.findIndex(({ role }) => role === 'time');
  const { eitherWay } = guessTimeFormat(place < 0 ? [] : head.rows.map((row) => row[place] ?? ''));
  const zones = [...new Set(['UTC', ...Intl.supportedValuesOf('timeZone'), zone])];
  return (
    <>
      <div className={styles['fields']}>
        <NativeSelect
          label={text.timeFormat}
          value={format}
          data={timeFormats.map((value) => ({ value, label: text.timeFormats[value] }))}
          onChange={(event) => onChange({ ...draft, format: event.currentTarget.value as TimeFormat })}
        />
        <NativeSelect
          label={text.zone}
          value={zone}
          data={zones}
          onChange={(event) => onChange({ ...draft, zone: event.currentTarget.value })}
        />
      </div>
      {eitherWay ? <ProblemNote problem={{ severity: 'warning', text: text.eitherWay }} /> : null}
    </>
  );
}
