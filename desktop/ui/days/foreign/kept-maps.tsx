import { Button, NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { FileHead, ImportMap } from '../../../../shared-types/foreign-log.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useImport } from '../../store/import-store.ts';
import { readyValue } from '../../store/loaded.ts';
import { en } from '../../text/en.ts';
import { type Draft, draftOfMap } from './draft.ts';
import styles from './foreign.module.css';

const text = en.foreign;

interface Props {
  readonly head: FileHead;
  /** What is said of the columns now; undefined while something is missing. */
  readonly map: ImportMap | undefined;
  readonly onChoose: (draft: Draft) => void;
}

/** Columns that were said before, and a way to keep those of now. */
export function KeptMaps({ head, map, onChoose }: Props) {
  const feed = useFeed();
  const loaded = useImport((state) => state.maps);
  const maps = readyValue(loaded ?? undefined) ?? [];
  const [chosen, setChosen] = useState('');
  const [name, setName] = useState('');
  const isKept = maps.some((kept) => kept.name === chosen);
  const choose = (wanted: string) => {
    setChosen(wanted);
    const kept = maps.find((one) => one.name === wanted);
    if (kept !== undefined) onChoose(draftOfMap(head, kept.map));
  };
  return (
    <>
      {loaded?.state === 'failed' ? <ProblemNote problem={loaded.problem} /> : null}
      <div className={styles['fields']}>
        {maps.length === 0 ? null : (
          <NativeSelect
            label={text.keptMaps}
            value={isKept ? chosen : ''}
            data={[{ value: '', label: text.noKeptMap }, ...maps.map((kept) => kept.name)]}
            onChange={(event) => choose(event.currentTarget.value)}
          />
        )}
        <TextInput
          label={text.mapName}
          value={name}
          maxLength={60}
          onChange={(event) => setName(event.currentTarget.value)}
        />
      </div>
      <div className={styles['row']}>
        <Button
          variant="default"
          size="compact-sm"
          disabled={map === undefined || name.trim() === ''}
          onClick={() => {
            if (map !== undefined) void feed.keepMap(name.trim(), map);
          }}
        >
          {text.keepMap}
        </Button>
        {isKept ? (
          <Button variant="default" size="compact-sm" onClick={() => void feed.forgetMap(chosen)}>
            {text.forgetMap}
          </Button>
        ) : null}
        <span role="status" className={styles['soft']}>
          {maps.some((kept) => kept.name === name.trim()) ? text.mapKept(name.trim()) : null}
        </span>
      </div>
    </>
  );
}
