import { useState } from 'react';
import type { FileForm, FileHead } from '../../../../shared-types/foreign-log.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { en } from '../../text/en.ts';
import { ColumnList } from './column-list.tsx';
import { type Draft, faultsOf, guessedDraft, mapOf } from './draft.ts';
import styles from './foreign.module.css';
import { FormFields } from './form-fields.tsx';
import { KeptMaps } from './kept-maps.tsx';
import { RunPart } from './run-part.tsx';
import { TimeFields } from './time-fields.tsx';

const text = en.foreign;

interface Props {
  readonly head: FileHead;
  readonly site: string;
  readonly zone: string;
}

/** How the file is written and what its columns are; then what came of it. */
export function MapForm({ head, site, zone }: Props) {
  const feed = useFeed();
  const [draft, setDraft] = useState<Draft>(() => guessedDraft(head, zone));
  const [form, setForm] = useState<FileForm>({ headerLine: 1, ...formOf(head) });
  const faults = faultsOf(draft);
  const map = mapOf(draft, form);
  return (
    <>
      <h3>{text.form}</h3>
      <FormFields
        form={form}
        onChange={(next) => {
          setForm(next);
          void feed.readHead(next);
        }}
      />
      <h3>{text.columns}</h3>
      <KeptMaps head={head} map={faults.length === 0 ? map : undefined} onChoose={setDraft} />
      <ColumnList head={head} draft={draft} onChange={setDraft} />
      <h3>{text.time}</h3>
      <TimeFields head={head} draft={draft} onChange={setDraft} />
      {faults.length === 0 ? null : (
        <ul className={styles['list']}>
          {faults.map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      )}
      <RunPart site={site} map={faults.length === 0 ? map : undefined} />
    </>
  );
}

const formOf = ({ delimiter, decimal, encoding }: FileHead) => ({ delimiter, decimal, encoding });
